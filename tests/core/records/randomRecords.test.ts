import { describe, expect, it } from "vitest";
import { isoText } from "../../../src/cells/day.ts";
import { caseTable } from "../../../src/core/animals/caseTable.ts";
import { repeatAnimals } from "../../../src/core/animals/repeatAnimals.ts";
import { treatLag } from "../../../src/core/animals/treatLag.ts";
import { flockRank } from "../../../src/core/benchmarking/flockRank.ts";
import { clearDate } from "../../../src/core/dates/clearDate.ts";
import { medicineUse } from "../../../src/core/medicines/medicineUse.ts";
import type { Tag } from "../../../src/core/words/tagKey.ts";
import { expectNear } from "../near.ts";
import { cases, ownReferences } from "../references.ts";

// Made by tests/references/records/script.R: base R and stats.
const values = ownReferences(import.meta.url);

const rowOf = (index: number): number => index + 1;
const tagOf = (animal: number): Tag => ({ key: String(animal), shown: String(animal) });
type Pairs = readonly (readonly [number, number])[];
const inOrder = (pairs: Pairs): Pairs => [...pairs].sort((one, other) => one[0] - other[0] || one[1] - other[1]);

interface Records {
  readonly animals: readonly number[];
  readonly dates: readonly number[];
  readonly gap: number;
}

describe("random records against R", () => {
  it("the day on which each case began", () => {
    for (const [{ animals, dates, gap }, begun] of cases<Records, Pairs>(values, "cases")) {
      const { count, tag, first } = caseTable({ tags: animals.map(tagOf), dates }, gap, undefined, rowOf);
      const found = Array.from({ length: count }, (_, line) => [Number(tag(line)), Number(first(line))] as const);
      expect(inOrder(found)).toEqual(inOrder(begun));
    }
  });

  it("the animals with several cases in a season", () => {
    type Season = Records & { readonly atLeast: number; readonly from: number };
    for (const [{ animals, dates, gap, atLeast, from }, counts] of cases<Season, Pairs>(values, "repeats")) {
      const rule = { atLeast, gapDays: gap, from };
      const found = repeatAnimals({ tags: animals.map(tagOf), dates }, rule, rowOf);
      expect(inOrder(found.map(({ tag, cases: count }) => [Number(tag), Number(count)]))).toEqual(inOrder(counts));
    }
  });

  it("how long they waited for treatment", () => {
    interface Waits {
      readonly seen: readonly number[];
      readonly treated: readonly (number | null)[];
      readonly within: number;
      readonly asOf: number;
    }
    for (const [{ seen, treated, within, asOf }, expected] of cases<Waits, readonly number[]>(values, "lags")) {
      const days = treated.map((day) => day ?? undefined);
      const { medianDays, inTime = Number.NaN, untreated } = treatLag(seen, days, within, asOf);
      expect([medianDays, untreated]).toEqual([expected[0], expected[2]]);
      expectNear(inTime, expected[1] as number, 1e-12);
    }
  });

  it("how many flocks one does better than", () => {
    interface Flocks {
      readonly own: number;
      readonly others: readonly number[];
    }
    for (const [{ own, others }, share] of cases<Flocks, number>(values, "ranks"))
      expectNear(flockRank(own, others, true), share, 1e-12);
  });

  it("the first free day, on the calendar", () => {
    type Treatment = [treated: number, days: number];
    for (const [[treated, days], [serial, written]] of cases<Treatment, [number, number]>(values, "clear")) {
      const free = clearDate(treated, days, "whole days");
      expect([free, Number(isoText(free).replaceAll("-", ""))]).toEqual([serial, written]);
    }
  });

  it("what was used of each product", () => {
    interface Courses {
      readonly products: readonly string[];
      readonly ml: readonly number[];
      readonly strength: readonly number[];
      readonly ewes: number;
      readonly lambs: number;
    }
    for (const [courses, lines] of cases<Courses, readonly (readonly number[])[]>(values, "use")) {
      const { products, ml, strength, ewes, lambs } = courses;
      const found = medicineUse({ products, ml, mgPerMl: strength }, ewes, lambs);
      expect(found.map(({ product }) => product)).toEqual([...new Set(products), "all"]);
      found.forEach((use, at) => {
        const [count, sum, mg, perPcu] = lines[at] as readonly number[];
        expect(use.courses).toBe(count);
        expectNear(use.ml, sum as number, 1e-12);
        expectNear(use.activeMg, mg as number, 1e-12);
        expectNear(use.mgPerPcu ?? Number.NaN, perPcu as number, 1e-12);
      });
    }
  });
});
