import { assert, constantFrom, integer, oneof, property, string, uniqueArray } from "fast-check";
import { describe, expect, it } from "vitest";
import { Problem } from "../../../src/cells/problem.ts";
import { type Tag, tagKey } from "../../../src/core/words/tagKey.ts";
import { tagReader } from "../../../src/core/words/tagReader.ts";

const digits = (length: number) => string({ minLength: length, maxLength: length, unit: constantFrom("0", "1") });
const printed = (letters: string) => digits(11).map((own) => `${letters} 0 1${own.slice(0, 5)} ${own.slice(6)}`);
const cells = oneof(
  printed("ZZ"),
  printed("UK"),
  printed("GB"),
  // No country has these letters.
  printed("QQ"),
  digits(4),
  digits(11).map((own) => `9990${own}`),
  integer({ min: 1, max: 1111 }),
  digits(3).map((own) => ` ${own}`),
);

/** What is read, or the sentence of the refusal. */
const tried = <T>(work: () => T): T | string => {
  try {
    return work();
  } catch (error) {
    if (error instanceof Problem) return error.message;
    throw error;
  }
};

describe("tagReader", () => {
  it("reads each tag as tagKey does, and refuses the same", () => {
    assert(
      property(uniqueArray(cells), (column) => {
        const read = tagReader();
        for (const cell of column) {
          const tag = tried(() => read(cell));
          expect(typeof tag === "string" ? tag : tag.key).toBe(tried(() => tagKey(cell)));
          if (typeof tag !== "string") expect(tag.shown).toBe(String(cell).trim());
        }
      }),
    );
  });

  it("says that two spellings are apart only where they are two animals", () => {
    assert(
      property(uniqueArray(cells), (column) => {
        const read = tagReader();
        const tags = column.map((cell) => tried(() => read(cell))).filter((tag): tag is Tag => typeof tag !== "string");
        for (const [at, one] of tags.entries())
          for (const other of tags.slice(0, at))
            if (one.apart !== undefined && one.apart === other.apart) expect(one.key).not.toBe(other.key);
      }),
    );
  });

  it("tells apart tags of one form: printed with one country's letters, numbers, keys as they are", () => {
    const read = tagReader();
    const [one, other] = [read("ZZ 0 123456 00042"), read("ZZ 0 123456 00043")];
    expect(one.apart).toBeDefined();
    expect(one.apart).toBe(other.apart);
    expect(read("042").apart).toBe(read("B12").apart);
    expect(read(42).apart).toBe(read(43).apart);
    expect(new Set([one, read("041"), read(41), read("UK 0 123456 00042")].map(({ apart }) => apart)).size).toBe(4);
    expect(read(" 044").apart).toBeUndefined();
  });
});
