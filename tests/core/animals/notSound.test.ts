import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { Doubt } from "../../../src/cells/doubt.ts";
import { notSound } from "../../../src/core/animals/notSound.ts";
import { noTag } from "../../../src/core/words/faults.ts";
import type { Tag } from "../../../src/core/words/tagKey.ts";

const tagOf = (name: string): Tag => ({ key: name, shown: name });
const unread = new Doubt("treated", { what: '"soon" is not a date', mend: "enter a date" });
const asOf = 46_100;

interface Row {
  readonly tag: Tag | undefined | Doubt;
  readonly treated: number | undefined | Doubt;
  readonly lesion?: string | undefined;
  readonly medicine?: string | undefined;
  readonly sound?: number | undefined | Doubt;
  readonly left?: number | undefined | Doubt;
}

const listOf = (rows: readonly Row[], rule: Parameters<typeof notSound>[2] = { atLeast: 2 }) =>
  notSound(
    asOf,
    {
      tags: rows.map(({ tag }) => tag),
      treated: rows.map(({ treated }) => treated),
      lesions: rows.map(({ lesion }) => lesion),
      medicines: rows.map(({ medicine }) => medicine),
      soundOn: rows.map(({ sound }) => sound),
      leftOn: rows.map(({ left }) => left),
    },
    rule,
    (index) => index + 1,
  );

const row = (name: string, daysAgo: number, rest: Partial<Row> = {}): Row => ({
  tag: tagOf(name),
  treated: asOf - daysAgo,
  lesion: "footrot",
  medicine: "X",
  ...rest,
});

// What counts as a treatment that failed: common practice, no source.
describe("animals treated again and not sound", () => {
  it("are settled by a day on which they were sound or had left, in whichever row it stands", () => {
    const twice = [row("A", 20), row("A", 10)];
    expect(listOf(twice)).toHaveLength(1);
    expect(listOf([row("A", 20, { sound: asOf - 5 }), row("A", 10)])).toEqual([]);
    expect(listOf([row("A", 20), row("A", 10, { left: asOf - 5 })])).toEqual([]);
    expect(listOf([row("A", 20, { sound: asOf - 15 }), row("A", 10)])).toEqual([]);
    // A day to come settles nothing.
    expect(listOf([row("A", 20), row("A", 10, { sound: asOf + 1 })])).toHaveLength(1);
    expect(listOf([row("A", 20), row("A", -1)])).toEqual([]);
    expect(listOf(twice, { atLeast: 2, from: asOf - 15 })).toEqual([]);
  });

  it("count days: two medicines on one day are one treatment, joined by a plus", () => {
    const both = [row("A", 10), row("A", 10, { medicine: "Y" })];
    expect(listOf(both)).toEqual([]);
    const [line] = listOf([...both, row("A", 3, { lesion: "CODD" })]);
    expect(line).toMatchObject({
      treatments: 2,
      lesion: "footrot, then contagious ovine digital dermatitis",
      medicine: "X + Y, then X",
    });
  });

  it("stand with those of one lesion and medicine, the most frequent first", () => {
    const pair = (name: string, lesion: string) => [row(name, 20, { lesion }), row(name, 9, { lesion })];
    const tags = listOf([...pair("A", "scald"), ...pair("B", "footrot"), ...pair("C", "foot rot"), ...pair("D", "?!")]);
    expect(tags.map(({ tag }) => tag)).toEqual(["B", "C", "A", "D"]);
    expect(tags.at(-1)?.lesion).toBe("not recognised");
  });

  it("are not known where a row of theirs cannot be read, and any animal where its tag cannot", () => {
    const doubted = listOf([row("A", 20), row("A", 10, { treated: unread }), row("B", 5)]);
    expect(doubted).toMatchObject([{ tag: "A", treatments: "not known" }]);
    expect(listOf([row("A", 20), row("A", 10, { sound: unread })])).toMatchObject([
      { tag: "A", treatments: "not known" },
    ]);
    expect(listOf([row("A", 20, { tag: new Doubt("tags", noTag) })])[0]?.tag).toBe("any animal");
    expect(listOf([row("A", 20, { tag: undefined })])[0]?.tag).toBe("any animal");
    // Sound since, whoever it was.
    expect(listOf([row("A", 20, { tag: undefined, sound: asOf - 9 })])).toEqual([]);
  });

  it("are those that a count by hand finds, in any order of rows", () => {
    const record = fc.record({
      tag: fc.constantFrom(..."ABCD".split("").map(tagOf)),
      treated: fc.option(fc.integer({ min: asOf - 20, max: asOf + 3 }), { nil: undefined }),
      lesion: fc.constantFrom("footrot", "scald", undefined),
      medicine: fc.constantFrom("X", "Y", undefined),
      sound: fc.option(fc.integer({ min: asOf - 20, max: asOf + 3 }), { nil: undefined, freq: 3 }),
      left: fc.option(fc.integer({ min: asOf - 20, max: asOf + 3 }), { nil: undefined, freq: 2 }),
    });
    fc.assert(
      fc.property(fc.array(record, { maxLength: 14 }), (rows) => {
        const expected = new Map<string, number>();
        for (const { tag } of rows) {
          const own = rows.filter((one) => one.tag === tag);
          const over = own.flatMap(({ sound, left }) =>
            [sound, left].filter((day) => day !== undefined && day <= asOf),
          );
          const open = own.filter(
            ({ treated }) => treated !== undefined && treated <= asOf && over.every((day) => (day as number) < treated),
          );
          const days = new Set(open.map(({ treated }) => treated)).size;
          if (days >= 2) expected.set(tag.shown, days);
        }
        const found = (list: ReturnType<typeof listOf>) =>
          new Map(list.map(({ tag, treatments }) => [tag, treatments]));
        expect(found(listOf(rows))).toEqual(expected);
        expect(found(listOf([...rows].reverse()))).toEqual(expected);
      }),
    );
  });
});
