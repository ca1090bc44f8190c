import { array, assert, nat, property } from "fast-check";
import { describe, expect, it } from "vitest";
import { byAnimal } from "../../../src/core/words/byAnimal.ts";
import { type Tag, tagKey } from "../../../src/core/words/tagKey.ts";
import { tagReader } from "../../../src/core/words/tagReader.ts";

const tag = (shown: string, spelling?: number): Tag => ({
  key: tagKey(shown),
  shown,
  ...(spelling === undefined ? {} : { spelling }),
});

describe("byAnimal", () => {
  it("finds an animal by each spelling of its tag", () => {
    const known = byAnimal<number>();
    known.set(tag("ZZ 0 123456 00042", 0), 7);
    expect(known.get(tag("999012345600042", 1))).toBe(7);
    expect(known.get(tag("zz 0 123456 42"))).toBe(7);
  });

  it("is not misled by a spelling of another column that has the same number", () => {
    const known = byAnimal<number>();
    known.set(tag("041", 0), 1);
    known.set(tag("042", 1), 2);
    expect([tag("042", 0), tag("041", 1), tag("043", 0)].map(known.get)).toEqual([2, 1, undefined]);
  });

  it("answers as a Map by key does for tags that a reader told apart, in whatever order their forms come", () => {
    const written = ["ZZ 0 123456 00042", "ZZ 0 123456 00043", "UK 0 123456 00042", "GB 0 123456 00042"];
    const others = ["999012345600042", "zz 0 123456 00043", 999012345600042, "826012345600042", "042", 42, "42", "42 "];
    assert(
      property(array(nat(11), { maxLength: 30 }), (order) => {
        const known = byAnimal<number>();
        const plain = new Map<string, number>();
        const read = tagReader();
        const tags = new Map<string | number, Tag>();
        for (const at of order) {
          const cell = [...written, ...others][at] as string | number;
          const asked = tags.get(cell) ?? read(cell);
          tags.set(cell, asked);
          expect(known.get(asked)).toBe(plain.get(tagKey(cell)));
          if (plain.has(tagKey(cell))) continue;
          known.set(asked, at);
          plain.set(tagKey(cell), at);
        }
        expect(known.values).toEqual([...plain.values()]);
      }),
    );
  });

  it("answers as a Map by key does, whatever columns the tags come from", () => {
    const columns = [0, 1, 2].map((column) =>
      // The same animals, in another order in each column.
      [0, 1, 2, 3, 4].map((at) => tag(`04${(at * (column + 1) + column) % 5}`, at)),
    );
    const step = array(nat(14), { maxLength: 40 });
    assert(
      property(step, (steps) => {
        const known = byAnimal<number>();
        const plain = new Map<string, number>();
        steps.forEach((at, value) => {
          const asked = columns[at % 3]?.[Math.floor(at / 3)] as Tag;
          expect(known.get(asked)).toBe(plain.get(asked.key));
          if (plain.has(asked.key)) return;
          known.set(asked, value);
          plain.set(asked.key, value);
        });
        expect(known.values).toEqual([...plain.values()]);
      }),
    );
  });
});
