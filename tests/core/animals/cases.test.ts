import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { caseNumbers as numbersOf } from "../../../src/core/animals/caseNumbers.ts";
import { type Case, cases as eachCase } from "../../../src/core/animals/cases.ts";
import { type RepeatRule, repeatAnimals as repeatsOf } from "../../../src/core/animals/repeatAnimals.ts";
import { type Foot, feet } from "../../../src/core/words/footNames.ts";
import type { Tag } from "../../../src/core/words/tagKey.ts";

const tagOf = (shown: string): Tag => ({ key: shown.toUpperCase(), shown });
const [a, b] = [tagOf("a"), tagOf("b")];

const rowOf = (index: number): number => index + 1;
const caseNumbers = (
  asked: Parameters<typeof numbersOf>[0],
  tags: readonly Tag[],
  dates: readonly number[],
  gap: number,
) => numbersOf(asked, { tags, dates }, gap, rowOf);
const repeatAnimals = (tags: readonly Tag[], dates: readonly number[], rule: RepeatRule) =>
  repeatsOf({ tags, dates }, rule, rowOf);

describe("cases", () => {
  // Common practice, no source: worked out by hand.
  it("chains records within the gap of the previous one", () => {
    const found = cases([a, b, a, a, a], [30, 0, 0, 10, 24], 14);
    expect(found).toEqual([
      { tag: a, number: 1, first: 0, last: 30, treatments: 4, foot: undefined },
      { tag: b, number: 1, first: 0, last: 0, treatments: 1, foot: undefined },
    ]);
  });

  it("begins a new case one day beyond the gap, and takes two spellings for one animal", () => {
    const found = cases([a, tagOf("A"), a], [0, 14, 29], 14);
    expect(found.map(({ number, first, last, treatments }) => [number, first, last, treatments])).toEqual([
      [1, 0, 14, 2],
      [2, 29, 29, 1],
    ]);
    expect(found.every(({ tag }) => tag === a)).toBe(true);
  });

  it("keeps a chain for each foot and counts a record for every foot it names", () => {
    const lf: readonly Foot[] = ["left fore"];
    const found = cases([a, a, a, a], [0, 3, 20, 21], 14, [lf, ["left fore", "right hind"], undefined, ["right hind"]]);
    expect(found.map(({ number, foot, first, last, treatments }) => [number, foot, first, last, treatments])).toEqual([
      [1, "left fore", 0, 3, 2],
      [2, "right hind", 3, 3, 1],
      [3, "not recorded", 20, 20, 1],
      [4, "right hind", 21, 21, 1],
    ]);
  });
});

const records = fc.array(fc.tuple(fc.constantFrom(..."abcdefg"), fc.integer({ min: 0, max: 300 })), { maxLength: 120 });
const cases = (...given: Parameters<typeof eachCase>) => [...eachCase(...given)];

const gaps = fc.integer({ min: 0, max: 40 });
const split = (list: readonly (readonly [string, number])[]) =>
  [list.map(([name]) => tagOf(name)), list.map(([, day]) => day)] as const;

/** Slow and obvious: for each animal, sort its days and cut where the step is larger than the gap. */
function cutByHand(list: readonly (readonly [string, number])[], gap: number): string[] {
  const lines: string[] = [];
  for (const name of new Set(list.map(([name]) => name))) {
    const days = list.filter(([other]) => other === name).map(([, day]) => day);
    days.sort((x, y) => x - y);
    let part: number[] = [];
    let number = 0;
    days.forEach((day, index) => {
      part.push(day);
      const following = days[index + 1];
      if (following === undefined || following - day > gap) {
        lines.push([name, ++number, part[0], day, part.length].join(" "));
        part = [];
      }
    });
  }
  return lines;
}

const asLine = ({ tag, number, first, last, treatments }: Case): string =>
  [tag.shown, number, first, last, treatments].join(" ");

describe("cases of any records", () => {
  it("are those that cutting each animal's sorted days gives", () => {
    fc.assert(
      fc.property(records, gaps, (list, gap) => {
        expect(cases(...split(list), gap).map(asLine)).toEqual(cutByHand(list, gap));
      }),
    );
  });

  it("do not depend on the order of the rows", () => {
    fc.assert(
      fc.property(
        records.chain((list) => fc.tuple(fc.constant(list), fc.shuffledSubarray(list, { minLength: list.length }))),
        gaps,
        ([list, shuffled], gap) => {
          const sorted = (rows: typeof list) =>
            cases(...split(rows), gap)
              .map(asLine)
              .sort();
          expect(sorted(shuffled)).toEqual(sorted(list));
        },
      ),
    );
  });

  it("hold every record once, and every foot named once", () => {
    const footed = fc.array(
      fc.tuple(
        fc.constantFrom(..."abc"),
        fc.integer({ min: 0, max: 100 }),
        fc.option(fc.subarray([...feet], { minLength: 1 }), { nil: undefined }),
      ),
    );
    fc.assert(
      fc.property(footed, gaps, (list, gap) => {
        const [tags, days] = split(list.map(([name, day]) => [name, day] as const));
        const total = cases(
          tags,
          days,
          gap,
          list.map(([, , named]) => named),
        ).reduce((sum, one) => sum + one.treatments, 0);
        expect(total).toBe(list.reduce((sum, [, , named]) => sum + (named?.length ?? 1), 0));
      }),
    );
  });

  it("number every record's own day as CASETABLE does", () => {
    fc.assert(
      fc.property(records, gaps, (list, gap) => {
        const [tags, days] = split(list);
        const all = cases(tags, days, gap);
        caseNumbers({ tags, days }, tags, days, gap).forEach((answer, row) => {
          const own = all.find(
            ({ tag, first, last }) =>
              tag.key === tags[row]?.key && first <= (days[row] ?? NaN) && last >= (days[row] ?? NaN),
          );
          expect(answer).toBe(own?.number);
        });
      }),
    );
  });
});

describe("caseNumbers", () => {
  it("names the nearest case of those of one animal, the earlier of two as near", () => {
    fc.assert(
      fc.property(records, gaps, fc.integer({ min: 0, max: 320 }), (list, gap, day) => {
        const [tags, days] = split(list.map(([, on]) => ["a", on] as const));
        const [answer] = caseNumbers({ tags: [a], days: [day] }, tags, days, gap);
        const distances = cases(tags, days, gap).map(({ first, last }) => Math.max(first - day, day - last, 0));
        const least = Math.min(...distances);
        if (answer === undefined || tags.length === 0) return;
        if (typeof answer === "number") expect(distances[answer - 1]).toBe(0);
        else expect(answer.none).toContain(`the nearest is case ${distances.indexOf(least) + 1},`);
        expect(typeof answer === "number").toBe(least === 0);
      }),
    );
  });

  it("says in words why a day has no case", () => {
    const asked = { tags: [a, b], days: [46090, 46090] };
    expect(caseNumbers(asked, [a, a, a], [46063, 46070, 46100], 14)).toEqual([
      { none: "a has no case on 9 Mar 2026; the nearest is case 2, on 19 Mar 2026", asked: "date" },
      { none: "b has no record", asked: "tag" },
    ]);
  });
});

describe("repeatAnimals", () => {
  it("counts cases that began within the days given", () => {
    const tags = [a, a, a, b, b];
    const days = [0, 10, 50, 5, 100];
    const rule = { atLeast: 2, gapDays: 14 };
    expect(repeatAnimals(tags, days, rule)).toEqual([
      { tag: "b", cases: 2, first: 5, last: 100 },
      { tag: "a", cases: 2, first: 0, last: 50 },
    ]);
    expect(repeatAnimals(tags, days, { ...rule, from: 0, until: 50 })).toEqual([
      { tag: "a", cases: 2, first: 0, last: 50 },
    ]);
    expect(repeatAnimals(tags, days, { ...rule, from: 1, until: 50 })).toEqual([]);
    expect(repeatAnimals(tags, days, { ...rule, from: 0, until: 49 })).toEqual([]);
    // On day 5 the first case of a is running, but it began before.
    expect(repeatAnimals(tags, days, { ...rule, atLeast: 1, from: 1, until: 60 })).toEqual([
      { tag: "a", cases: 1, first: 50, last: 50 },
      { tag: "b", cases: 1, first: 5, last: 5 },
    ]);
  });

  it("takes a record exactly the gap later for the same case, one a day later for a new one", () => {
    const rule = { atLeast: 1, gapDays: 14 };
    expect(repeatAnimals([a, a, a], [0, 14, 28], rule)).toEqual([{ tag: "a", cases: 1, first: 0, last: 28 }]);
    expect(repeatAnimals([a, a, a], [0, 14, 29], rule)).toEqual([{ tag: "a", cases: 2, first: 0, last: 29 }]);
  });

  it("refuses days the wrong way round", () =>
    expect(() => repeatAnimals([a], [0], { atLeast: 2, gapDays: 14, from: 46100, until: 46063 })).toThrow(
      "from: 19 Mar 2026 is after until, 10 Feb 2026",
    ));

  it("lists the animals whose cases reach the number, most first", () => {
    fc.assert(
      fc.property(records, gaps, fc.integer({ min: 1, max: 4 }), (list, gapDays, atLeast) => {
        const counted = new Map<string, number>();
        for (const { tag } of cases(...split(list), gapDays)) counted.set(tag.shown, (counted.get(tag.shown) ?? 0) + 1);
        const found = repeatAnimals(...split(list), { atLeast, gapDays });
        expect(new Map(found.map((one) => [one.tag, one.cases]))).toEqual(
          new Map([...counted].filter(([, number]) => number >= atLeast)),
        );
        expect(found.map((one) => one.cases)).toEqual(found.map((one) => Number(one.cases)).sort((x, y) => y - x));
      }),
    );
  });
});
