import { readFileSync } from "node:fs";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { dayOf } from "../../../src/cells/day.ts";
import { driftWatch } from "../../../src/core/watching/driftWatch.ts";
import { falseAlarmChance } from "../../../src/core/watching/falseAlarmChance.ts";
import { exactLimits, threeSigmaLimits } from "../../../src/core/watching/gatherLimits.ts";
import { lameWatch } from "../../../src/core/watching/lameWatch.ts";
import { runSignals } from "../../../src/core/watching/runSignals.ts";
import { weightedAverages } from "../../../src/core/watching/weightedAverages.ts";
import { expectNear } from "../near.ts";
import { problemOf } from "../problemOf.ts";
import { cases, ownReferences } from "../references.ts";

interface WatchedOfR {
  readonly lame: readonly number[];
  readonly seen: readonly number[];
  readonly low: readonly number[];
  readonly high: readonly number[];
}

const gathersOfR = JSON.parse(
  readFileSync(new URL("../../references/gathers/values.json", import.meta.url), "utf8"),
) as {
  readonly laney: readonly (WatchedOfR & { readonly centre: number })[];
  readonly season: WatchedOfR & { readonly days: readonly number[]; readonly centre: readonly number[] };
};

// Made by tests/references/watching/make.py.
const values = ownReferences(import.meta.url);

const days = (count: number): number[] => Array.from({ length: count }, (_, day) => 46000 + 30 * day);
const total = (numbers: readonly number[]): number => numbers.reduce((sum, number) => sum + number, 0);
const all = (count: number, value: number): number[] => new Array<number>(count).fill(value);

describe("limits of a gather", () => {
  it("exact ones agree with the reference values", () => {
    for (const [[n, p], [low, high]] of cases<[number, number], [number, number]>(values, "binomialLimits")) {
      expect(exactLimits(n, p), `${n} ${p}`).toEqual({ low: low / n, high: high / n });
    }
  });

  it("three standard deviations agree with the reference values", () => {
    for (const [[n, p], [low, high]] of cases<[number, number], [number, number]>(values, "threeSigma")) {
      expectNear(threeSigmaLimits(n, p).low, low, 1e-10, `low ${n} ${p}`);
      expectNear(threeSigmaLimits(n, p).high, high, 1e-10, `high ${n} ${p}`);
    }
  });

  it("no share is flagged where none or all are expected lame, and they are", () => {
    expect(exactLimits(30, 0)).toEqual({ low: 0, high: 0 });
    expect(exactLimits(30, 1)).toEqual({ low: 1, high: 1 });
  });
});

describe("lameWatch", () => {
  // NIST/SEMATECH e-Handbook 6.3.3.2, 50 chips a wafer; the counts from memory, their mean agrees with the page.
  const chips = [
    12, 15, 8, 10, 4, 7, 16, 9, 14, 10, 5, 6, 17, 12, 22, 8, 10, 5, 13, 11, 20, 18, 24, 15, 9, 12, 7, 13, 9, 6,
  ];

  it("gives the handbook's limits and signals", () => {
    const rows = lameWatch(days(30), chips, all(30, 50), { limits: "3sigma", spread: "chance" });
    expectNear(rows[0]?.centre ?? NaN, 0.2313333, 2e-7);
    expectNear(rows[0]?.low ?? NaN, 0.0524275481, 1e-9);
    expectNear(rows[0]?.high ?? NaN, 0.4102391186, 1e-9);
    expect(rows.flatMap(({ signal }, index) => (signal === "" ? [] : [[index + 1, signal]]))).toEqual([
      [15, "above the high limit"],
      [23, "above the high limit"],
    ]);
  });

  it("takes the centre from the first gathers when told", () => {
    const rows = lameWatch(days(3), [1, 3, 40], [50, 50, 100], { baselineGathers: 2 });
    expect(rows.map(({ centre }) => centre)).toEqual([0.04, 0.04, 0.04]);
    expect(rows.map(({ signal }) => signal)).toEqual(["", "", "above the high limit"]);
  });

  // Made by tests/references/gathers/script.R.
  it("widens its limits as a p′ chart does", () => {
    const wider = gathersOfR.laney.filter(({ lame, seen, centre, low, high }) => {
      const rows = lameWatch(days(seen.length), lame, seen, { limits: "3sigma" });
      rows.forEach((row, index) => {
        expectNear(row.centre ?? NaN, centre, 1e-12, "centre");
        expectNear(row.low ?? NaN, low[index] ?? NaN, 1e-9, "low");
        expectNear(row.high ?? NaN, high[index] ?? NaN, 1e-10, "high");
      });
      const plain = lameWatch(days(seen.length), lame, seen, { limits: "3sigma", spread: "chance" });
      return (rows[0]?.high ?? 0) > (plain[0]?.high ?? 1);
    });
    expect(wider.length).toBeGreaterThan(3);
  });

  it("sets a gather against the same month of other years", () => {
    const { days: dates, lame, seen, centre, low, high } = gathersOfR.season;
    const rows = lameWatch(dates, lame, seen, { usualLevel: "month" });
    expect(rows).toHaveLength(36);
    rows.forEach((row, index) => {
      expectNear(row.centre ?? NaN, centre[index] ?? NaN, 1e-12, "centre");
      expectNear(row.low ?? NaN, low[index] ?? NaN, 1e-12, "low");
      expectNear(row.high ?? NaN, high[index] ?? NaN, 1e-12, "high");
    });
  });

  it("has no limits for a month that no other year has, and a run ends there", () => {
    const dates = ["2025-01-10", "2025-02-10", "2026-01-10", "2026-03-10"].map(dayOf);
    const rows = lameWatch(dates, [5, 5, 20, 30], all(4, 100), { usualLevel: "month" });
    expect(rows.map(({ centre }) => centre)).toEqual([0.2, undefined, 0.05, undefined]);
    expect(rows[3]).toEqual({
      date: dates[3],
      share: 0.3,
      centre: undefined,
      low: undefined,
      high: undefined,
      signal: "no gather in this month of another year",
    });
    expect(runSignals(all(9, 1), [0, 0, 0, 0, undefined, 0, 0, 0, 0]).every((word) => word === undefined)).toBe(true);
  });

  it("does not take a month of other years without a lame sheep for proof that none is usual", () => {
    const dates = ["2025-01-10", "2026-01-10"].map(dayOf);
    const [, row] = lameWatch(dates, [0, 1], all(2, 60), { usualLevel: "month" });
    expect(row).toMatchObject({ centre: 0, signal: "" });
  });

  // R's qbinom(c(0.00135, 0.99865), 100, 0.1): 2 and 20.
  it("takes a share on a limit for within it", () => {
    const rows = lameWatch(days(5), [10, 20, 21, 2, 1], all(5, 100), { baselineGathers: 1 });
    expect(rows.map(({ signal }) => signal)).toEqual(["", "", "above the high limit", "", "below the low limit"]);
  });

  it("names eight in a row, and a share on the centre ends the run", () => {
    const lame = [...all(4, 2), ...all(8, 7), 5, ...all(8, 4)];
    const rows = lameWatch(days(21), lame, all(21, 100), { baselineGathers: 21 });
    const target = rows[0]?.centre ?? NaN;
    expect(target).toBeCloseTo(101 / 2100, 12);
    expect(rows[10]?.signal).toBe("");
    expect(rows[11]?.signal).toBe("eight in a row above the centre");
    expect(rows[12]?.signal).toBe("eight in a row above the centre");
    expect(rows[20]?.signal).toBe("eight in a row below the centre");
    const onCentre = lameWatch(days(9), [7, 7, 7, 7, 5, 7, 7, 7, 7], all(9, 100), { baselineGathers: 1 });
    expect(onCentre.every(({ signal }) => signal === "")).toBe(true);
  });

  it("says both when both are so", () => {
    const rows = lameWatch(days(9), [2, ...all(7, 4), 30], all(9, 100), { baselineGathers: 1 });
    expect(rows[8]?.signal).toBe("above the high limit; eight in a row above the centre");
  });

  it("adds up the groups of one day and never depends on the order of rows", () => {
    const row = fc.tuple(
      fc.integer({ min: 46000, max: 46020 }),
      fc.integer({ min: 0, max: 20 }),
      fc.integer({ min: 20, max: 90 }),
    );
    fc.assert(
      fc.property(fc.array(row, { minLength: 1, maxLength: 60 }), (rows) => {
        const chart = (of: typeof rows) =>
          lameWatch(
            of.map(([d]) => d),
            of.map(([, x]) => x),
            of.map(([, , n]) => n),
          );
        const found = chart(rows);
        expect(chart([...rows].reverse())).toEqual(found);
        expect(found.map(({ date }) => date)).toEqual([...new Set(rows.map(([d]) => d))].sort((a, b) => a - b));
        const share = (of: typeof rows) => total(of.map(([, x]) => x)) / total(of.map(([, , n]) => n));
        for (const gather of found) {
          expect(gather.share).toBe(share(rows.filter(([day]) => day === gather.date)));
          expect(gather.centre).toBe(share(rows));
          expect(gather.low as number).toBeLessThanOrEqual(gather.centre as number);
          expect(gather.high as number).toBeGreaterThanOrEqual(gather.centre as number);
        }
      }),
    );
  });

  it("refuses a day without sheep, a baseline it does not have, and more lame than seen", () => {
    expect(problemOf(() => lameWatch([46000, 46001], [1, 0], [9, 0])).place).toEqual({ argument: "seen", index: 1 });
    expect(problemOf(() => lameWatch([46000], [1], [9], { baselineGathers: 2 })).message).toBe(
      "baseline_gathers: 2 cannot be the baseline of 1 gathers; enter 1 to 1",
    );
    expect(problemOf(() => lameWatch([46000], [1], [9], { baselineGathers: 0 })).place.argument).toBe(
      "baseline_gathers",
    );
    expect(problemOf(() => lameWatch([46000], [10], [9])).place).toEqual({ argument: "lame", index: 0 });
    expect(problemOf(() => lameWatch([], [], [])).code).toBe("#N/A");
  });

  it("charts a hundred thousand rows", () => {
    const many = 100_000;
    const rows = lameWatch(
      Array.from({ length: many }, (_, i) => 40000 + (i % 2000)),
      all(many, 1),
      all(many, 20),
    );
    expect(rows).toHaveLength(2000);
  });
});

describe("driftWatch", () => {
  it("agrees with the reference values", () => {
    const counts = values.driftCounts as readonly [number, number][];
    const [lame, seen] = [counts.map(([x]) => x), counts.map(([, n]) => n)];
    for (const [[weight, width, target], rows] of cases<[number, number, number], number[][]>(values, "drift")) {
      const choice = { weight, width, target, spread: "chance" } as const;
      driftWatch(days(counts.length), lame, seen, choice).forEach(({ drift, low, high }, index) => {
        const [averaged, lowest, highest] = rows[index] ?? [];
        expectNear(drift, averaged ?? NaN, 1e-12, "drift");
        expectNear(low, lowest ?? NaN, 1e-10, "low");
        expectNear(high, highest ?? NaN, 1e-10, "high");
      });
    }
  });

  // NIST/SEMATECH e-Handbook 6.3.2.4: target 50, weight 0.3, s 2.0539; the data from memory.
  it("gives the handbook's averages and limits", () => {
    const measured = [52, 47, 53, 49.3, 50.1, 47];
    const variances = all(measured.length, 2.0539 ** 2);
    const found = weightedAverages(measured, variances, { weight: 0.3, start: 50 }).map(({ average }) => average);
    [50.6, 49.52, 50.564, 50.1848, 50.15936, 49.211552].forEach((value, index) => {
      expectNear(found[index] ?? NaN, value, 1e-12);
    });
    const settled = weightedAverages(all(200, 50), all(200, 2.0539 ** 2), { weight: 0.3, start: 50 })[199];
    const reach = 3 * Math.sqrt(settled?.variance ?? NaN);
    expectNear(50 - reach, 47.41156826, 1e-9);
    expectNear(50 + reach, 52.58843174, 1e-9);
  });

  it("names a slow rise, and takes all gathers together as target unless told", () => {
    const lame = [3, 3, 3, 3, 6, 7, 8, 9];
    const rows = driftWatch(days(8), lame, all(8, 100), { weight: 0.2, width: 3, target: 0.03 });
    expect(rows.at(-1)?.signal).toBe("above the high limit");
    expect(rows[3]?.signal).toBe("");
    expect(driftWatch(days(8), lame, all(8, 100), { weight: 0.2, width: 3 })[0]?.centre).toBe(42 / 800);
  });

  // By hand: in standard deviations of 5 % of 100 the gathers lie 0, 3.2118 and 4.1295 from the target; the mean step, 2.0647,
  // over 2 / √π is 1.82984.
  it("widens its limits by the steps from one gather to the next", () => {
    const ask = (spread: "gathers" | "chance" | undefined) =>
      driftWatch(days(3), [5, 12, 14], all(3, 100), { weight: 0.2, width: 1, target: 0.05, spread });
    const [wide, narrow] = [ask(undefined), ask("chance")];
    wide.forEach(({ high }, index) => {
      expect((high - 0.05) / ((narrow[index]?.high ?? NaN) - 0.05)).toBeCloseTo(1.82984, 4);
    });
    expect(ask("gathers")).toEqual(wide);
    const alike = { weight: 0.2, width: 3, target: 0.05 };
    expect(driftWatch(days(3), [5, 5, 5], all(3, 100), alike)).toEqual(
      driftWatch(days(3), [5, 5, 5], all(3, 100), { ...alike, spread: "chance" }),
    );
  });

  it("refuses a weight or width out of range", () => {
    const ask = (weight: number, width: number) => () => driftWatch([46000], [1], [9], { weight, width });
    expect(problemOf(ask(0, 3)).place.argument).toBe("weight");
    expect(problemOf(ask(1.1, 3)).place.argument).toBe("weight");
    expect(problemOf(ask(0.2, 0)).place.argument).toBe("width");
  });
});

describe("false alarms", () => {
  it("agree with every history of gathers carried along one by one", () => {
    type Three = [number, number, number];
    for (const [[n, share, gathers], expected] of cases<Three, Three>(values, "falseAlarms")) {
      const found = falseAlarmChance({ seen: n, share, gathers, limits: exactLimits(n, share) });
      [found.beyondLimits, found.runs, found.either].forEach((chance, index) => {
        expect(Math.abs(chance - (expected[index] ?? NaN)), `${n} ${share} ${gathers}`).toBeLessThan(1e-13);
      });
    }
  });

  it("exact limits give at most 0.0027 a gather, three standard deviations can give many more", () => {
    const chance = (limits: typeof exactLimits) =>
      [20, 60, 200, 420].flatMap((seen) =>
        [0.01, 0.02, 0.05, 0.1].map(
          (share) => falseAlarmChance({ seen, share, gathers: 1, limits: limits(seen, share) }).beyondLimits,
        ),
      );
    expect(Math.max(...chance(exactLimits))).toBeLessThanOrEqual(0.0027);
    expect(Math.max(...chance(threeSigmaLimits))).toBeGreaterThan(0.01);
  });
});
