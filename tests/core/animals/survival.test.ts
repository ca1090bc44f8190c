import { readFileSync } from "node:fs";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { soundBy } from "../../../src/core/animals/soundBy.ts";
import { soundCurve } from "../../../src/core/animals/soundCurve.ts";
import { type CureRecords, watchedAnimals } from "../../../src/core/animals/watchedAnimals.ts";
import { aalenJohansen } from "../../../src/core/statistics/aalenJohansen.ts";
import { backward, cholesky, forward } from "../../../src/core/statistics/cholesky.ts";
import { type CurveStep, cureSteps } from "../../../src/core/statistics/cureSteps.ts";
import { effectiveLimits } from "../../../src/core/statistics/effectiveLimits.ts";
import { endsByDay, type Watched } from "../../../src/core/statistics/endsByDay.ts";
import { exactInterval } from "../../../src/core/statistics/exactInterval.ts";
import { turnbull } from "../../../src/core/statistics/turnbull.ts";
import { expectNear } from "../near.ts";

interface Flock {
  readonly confidence: number;
  readonly days: readonly number[];
  readonly sound: readonly (0 | 1)[];
  readonly at: readonly number[];
  readonly atRisk: readonly number[];
  readonly becameSound: readonly number[];
  readonly stillLame: readonly number[];
  readonly low: readonly (number | null)[];
  readonly high: readonly (number | null)[];
}

// Made by tests/references/survival/script.R with the survival package of R.
const reference = JSON.parse(
  readFileSync(new URL("../../references/survival/values.json", import.meta.url), "utf8"),
) as { readonly flocks: readonly Flock[] };

const watched = (days: readonly number[], sound: readonly (0 | 1)[]): Watched[] =>
  days.map((day, index) => ({ days: day, end: sound[index] === 1 ? "sound" : "lame" }));

describe("Kaplan and Meier's share", () => {
  it("gives what survfit with log-log limits gives, 570 values", () => {
    let compared = 0;
    for (const flock of reference.flocks) {
      const steps = aalenJohansen(endsByDay(watched(flock.days, flock.sound)), flock.confidence);
      expect(steps.map(({ day }) => day)).toEqual(flock.at);
      expect(steps.map(({ atRisk }) => atRisk)).toEqual(flock.atRisk);
      expect(steps.map(({ becameSound }) => becameSound)).toEqual(flock.becameSound);
      steps.forEach((step, index) => {
        expectNear(step.stillLame, flock.stillLame[index] as number, 1e-12, "share");
        const [low, high] = [flock.low[index], flock.high[index]];
        if (low === null) expect(step.limits).toBeUndefined();
        else {
          expectNear(step.limits?.low as number, low as number, 1e-10, "low");
          expectNear(step.limits?.high as number, high as number, 1e-10, "high");
        }
        compared += 3;
      });
    }
    expect(compared).toBe(570);
  });

  // Freireich et al 1963, 6-MP arm; shares and limits by R survival. A censoring on day 6 is still at risk on day 6.
  const sixMp: Watched[] = [
    ...[6, 6, 6, 7, 10, 13, 16, 22, 23].map((days) => ({ days, end: "sound" as const })),
    ...[6, 9, 10, 11, 17, 19, 20, 25, 32, 32, 34, 35].map((days) => ({ days, end: "lame" as const })),
  ];

  it("gives the published remission curve", () => {
    const steps = aalenJohansen(endsByDay(sixMp), 0.95);
    const on = (day: number) => steps.find((step) => step.day === day);
    expect(on(6)).toMatchObject({ atRisk: 21, becameSound: 3 });
    expect(on(6)?.stillLame).toBeCloseTo(0.857143, 6);
    expect(on(10)?.stillLame).toBeCloseTo(0.752941, 6);
    expect(on(23)?.stillLame).toBeCloseTo(0.448179, 6);
    expect(on(6)?.limits?.low).toBeCloseTo(0.619718, 6);
    expect(on(6)?.limits?.high).toBeCloseTo(0.951552, 6);
    expect(steps.find(({ stillLame }) => stillLame <= 0.5)?.day).toBe(23);
  });

  it("answers for a day between steps and refuses one past the last watched", () => {
    expect(soundBy(endsByDay(sixMp), 9, 0.95).share).toBe(soundBy(endsByDay(sixMp), 7, 0.95).share);
    expect(soundBy(endsByDay(sixMp), 5, 0.95)).toEqual({ share: 0, low: undefined, high: undefined });
    expect(soundBy(endsByDay(sixMp), 35, 0.95).share).toBeCloseTo(1 - 0.448179, 6);
    expect(() => soundBy(endsByDay(sixMp), 36, 0.95)).toThrow("by_days: no animal was watched for 36 days");
  });
});

const animals = fc.array(
  fc.record({ days: fc.integer({ min: 0, max: 60 }), end: fc.constantFrom("sound" as const, "lame" as const) }),
  {
    minLength: 1,
    maxLength: 80,
  },
);

describe("the curve of any flock", () => {
  it("is the plain share when every animal was watched to the end", () => {
    fc.assert(
      fc.property(
        fc.array(fc.integer({ min: 0, max: 60 }), { minLength: 1 }),
        fc.integer({ min: 0, max: 60 }),
        (days, by) => {
          const all = days.map((day) => ({ days: day, end: "sound" as const }));
          const { share } = soundBy(endsByDay(all), by, 0.95);
          expect(share).toBeCloseTo(days.filter((day) => day <= by).length / days.length, 12);
        },
      ),
    );
  });

  it("falls from 1, holds its limits around it, and loses as many animals as became sound", () => {
    fc.assert(
      fc.property(animals, (flock) => {
        const curve = soundCurve(endsByDay(flock), 0.9);
        expect(curve[0]?.day).toBe(0);
        expect(curve.at(-1)?.day).toBe(Math.max(...flock.map(({ days }) => days)));
        expect(curve.reduce((sum, { becameSound }) => sum + becameSound, 0)).toBe(
          flock.filter(({ end }) => end === "sound").length,
        );
        curve.forEach(({ day, stillLame, limits, atRisk }, index) => {
          expect(stillLame).toBeLessThanOrEqual(curve[index - 1]?.stillLame ?? 1);
          expect(atRisk).toBe(flock.filter(({ days }) => days >= day).length);
          expect(limits === undefined).toBe(stillLame === 0 || stillLame === 1);
          if (limits === undefined) return;
          expect(limits.low).toBeLessThanOrEqual(stillLame);
          expect(limits.high).toBeGreaterThanOrEqual(stillLame);
          expect(limits.low).toBeGreaterThanOrEqual(0);
          expect(limits.high).toBeLessThanOrEqual(1);
        });
      }),
    );
  });

  it("feels an animal watched for no time only in the step of day 0", () => {
    fc.assert(
      fc.property(animals, (flock) => {
        const before = aalenJohansen(endsByDay(flock), 0.95).map(({ day, stillLame }) => [day, stillLame]);
        const later = [...flock, { days: 0, end: "lame" as const }];
        const after = aalenJohansen(endsByDay(later), 0.95).filter(({ day }) => day > 0);
        const ratio =
          (aalenJohansen(endsByDay(later), 0.95).find(({ day }) => day === 0)?.stillLame ?? 1) /
          (aalenJohansen(endsByDay(flock), 0.95).find(({ day }) => day === 0)?.stillLame ?? 1);
        // Only the steps of day 0 know the added animal.
        if (Number.isFinite(ratio))
          after.forEach(({ day, stillLame }) => {
            expect(stillLame).toBeCloseTo((before.find(([other]) => other === day)?.[1] ?? NaN) * ratio, 10);
          });
      }),
    );
  });
});

interface Competing {
  readonly days: readonly number[];
  readonly end: readonly Watched["end"][];
  readonly day: readonly number[];
  readonly sound: readonly number[];
  readonly left: readonly number[];
  readonly se: readonly number[];
}

interface Between {
  /** Of each animal: last day lame, day found sound or gone (−1: neither), and 1 sound, 2 left, 0 still lame. */
  readonly lameUntil: readonly number[];
  readonly day: readonly number[];
  readonly kind: readonly (0 | 1 | 2)[];
  readonly at: readonly number[];
  readonly sound: readonly number[];
  readonly se: readonly (number | null)[];
}

// Made by tests/references/survival/between.R.
const betweenOfR = JSON.parse(
  readFileSync(new URL("../../references/survival/between.json", import.meta.url), "utf8"),
) as { readonly competing: readonly Competing[]; readonly between: readonly Between[] };

const errorOf = ({ variance }: CurveStep): number => Math.sqrt(variance ?? NaN);

describe("animals that left lame", () => {
  it("compete with those that became sound, as in survfit", () => {
    let compared = 0;
    for (const { days, end, day, sound, left, se } of betweenOfR.competing) {
      const steps = aalenJohansen(endsByDay(days.map((of, index) => ({ days: of, end: end[index] ?? "lame" }))), 0.95);
      expect(steps.map((step) => step.day)).toEqual(day);
      steps.forEach((step, index) => {
        expect(1 - step.stillLame).toBeCloseTo(sound[index] ?? NaN, 12);
        expect(step.leftLame).toBeCloseTo(left[index] ?? NaN, 12);
        if (step.limits !== undefined) expectNear(errorOf(step), se[index] ?? NaN, 1e-9, "standard error");
        compared++;
      });
    }
    expect(compared).toBeGreaterThan(100);
  });

  it("never count as sound: five sound on day 7 and five culled lame on day 5 are half", () => {
    const ends = endsByDay([
      ...Array.from({ length: 5 }, () => ({ days: 7, end: "sound" as const })),
      ...Array.from({ length: 5 }, () => ({ days: 5, end: "left" as const })),
    ]);
    expect(soundBy(ends, 7, 0.95).share).toBe(0.5);
    expect(soundBy(ends, 365, 0.95).share).toBe(0.5);
    expect(soundBy(ends, 5, 0.95)).toEqual({ share: 0, low: undefined, high: undefined });
    // Of ten that were all watched to the end the share is binomial: standard error √(½ ½ / 10).
    const step = aalenJohansen(ends, 0.95).at(-1);
    expect(step && errorOf(step)).toBeCloseTo(Math.sqrt(0.025), 10);
  });
});

describe("days known only between two looks", () => {
  const flockOf = ({ lameUntil, day, kind }: Between): Watched[] =>
    kind.map((end, index) => {
      const until = lameUntil[index] as number;
      if (end === 0) return { days: until, end: "lame" };
      return {
        days: day[index] as number,
        end: end === 1 ? "sound" : "left",
        lameUntil: end === 1 ? until : undefined,
      };
    });

  it("are shared out as is likeliest, with the errors of the information matrix", () => {
    let errors = 0;
    for (const flock of betweenOfR.between) {
      const steps = cureSteps(endsByDay(flockOf(flock)), 0.95);
      flock.at.forEach((day, index) => {
        const step = steps.find((one) => one.day === day);
        expect(1 - (step?.stillLame ?? NaN)).toBeCloseTo(flock.sound[index] ?? NaN, 8);
        const se = flock.se[index];
        if (se === null || se === undefined || step?.limits === undefined) return;
        expectNear(errorOf(step), se, 1e-5, "standard error");
        errors++;
      });
    }
    expect(errors).toBeGreaterThan(25);
  });

  // Finkelstein & Wolfe 1985, Biometrics 41:933, radiotherapy arm (months to retraction; Infinity: none yet), and the likeliest
  // shares for it as printed since in textbooks to four decimals: both from memory.
  it("give the published shares of a textbook set", () => {
    const months: readonly (readonly [number, number])[] = [
      [45, Infinity], [6, 10], [0, 7], [46, Infinity], [46, Infinity], [7, 16], [17, Infinity], [7, 14], [37, 44], [0, 8],
      [4, 11], [15, Infinity], [11, 15], [22, Infinity], [46, Infinity], [46, Infinity], [25, 37], [46, Infinity], [26, 40],
      [46, Infinity], [27, 34], [36, 44], [46, Infinity], [36, 48], [37, Infinity], [40, Infinity], [17, 25], [46, Infinity],
      [11, 18], [38, Infinity], [5, 12], [37, Infinity], [0, 5], [18, Infinity], [24, Infinity], [36, Infinity], [5, 11],
      [19, 35], [17, 25], [24, Infinity], [32, Infinity], [33, Infinity], [19, 26], [37, Infinity], [34, Infinity],
      [36, Infinity],
    ]; // biome-ignore format: a row of pairs reads best
    const steps = cureSteps(
      endsByDay(
        months.map(([from, to]) =>
          to === Infinity ? { days: from, end: "lame" } : { days: to, end: "sound", lameUntil: from },
        ),
      ),
      0.95,
    );
    let before = 1;
    const masses = steps.flatMap(({ day, stillLame }) => {
      const mass = before - stillLame;
      before = stillLame;
      return mass > 1e-6 ? [[day, Number(mass.toFixed(4))]] : [];
    });
    expect(masses).toEqual([
      [5, 0.0463],
      [7, 0.0334],
      [8, 0.0887],
      [12, 0.0708],
      [25, 0.0926],
      [34, 0.0818],
      [40, 0.1209],
      [48, 0.4656],
    ]);
  });

  it("are those of finding when the look before was the day before", () => {
    fc.assert(
      fc.property(animals, (flock) => {
        const looked = flock.map((one) => ({ ...one, lameUntil: one.end === "sound" ? one.days - 1 : undefined }));
        expect(cureSteps(endsByDay(looked), 0.95)).toEqual(aalenJohansen(endsByDay(flock), 0.95));
      }),
    );
  });

  it("agree in both ways of working when nothing lies between", () => {
    fc.assert(
      fc.property(animals, (flock) => {
        const ends = endsByDay(flock.map((one, index) => (index % 5 === 0 ? { ...one, end: "left" as const } : one)));
        const [one, other] = [turnbull(ends, 0.9), aalenJohansen(ends, 0.9)];
        expect(one.length).toBe(other.length);
        one.forEach((step, index) => {
          expect(step.stillLame).toBeCloseTo(other[index]?.stillLame ?? NaN, 9);
          expect(step.leftLame).toBeCloseTo(other[index]?.leftLame ?? NaN, 9);
          if (step.variance === undefined) return;
          expect(step.variance).toBeCloseTo(other[index]?.variance ?? NaN, 9);
        });
      }),
      { numRuns: 60 },
    );
  });

  it("never raise the share not sound, and leave it within its limits", () => {
    const looked = fc.record({
      days: fc.integer({ min: 0, max: 40 }),
      end: fc.constantFrom("sound" as const, "lame" as const, "left" as const),
      open: fc.integer({ min: 1, max: 15 }),
    });
    fc.assert(
      fc.property(fc.array(looked, { minLength: 1, maxLength: 50 }), (flock) => {
        const curve = soundCurve(
          endsByDay(
            flock.map(({ days, end, open }) => ({
              days,
              end,
              lameUntil: end === "sound" && days >= open ? days - open : undefined,
            })),
          ),
          0.9,
        );
        curve.forEach(({ stillLame, leftLame, limits }, index) => {
          expect(stillLame).toBeLessThanOrEqual((curve[index - 1]?.stillLame ?? 1) + 1e-9);
          expect(leftLame).toBeLessThanOrEqual(stillLame + 1e-9);
          if (limits === undefined) return;
          expect(limits.low).toBeLessThanOrEqual(stillLame + 1e-12);
          expect(limits.high).toBeGreaterThanOrEqual(stillLame - 1e-12);
        });
      }),
      { numRuns: 60 },
    );
  });
});

interface EffectiveCase {
  readonly share: number;
  readonly variance: number;
  readonly animals: number;
  readonly confidence: number;
  readonly low: number;
  readonly high: number;
}

// Made by tests/references/survival/effective.R: R's qt and qbeta.
const effectiveOfR = JSON.parse(
  readFileSync(new URL("../../references/survival/effective.json", import.meta.url), "utf8"),
) as readonly EffectiveCase[];

describe("limits from a variance alone", () => {
  it("are those of R for random shares and variances", () => {
    for (const { share, variance, animals, confidence, low, high } of effectiveOfR) {
      const found = effectiveLimits(share, variance, animals, confidence);
      expectNear(found.low, low, 1e-9, `low of ${share}, ${animals} animals`);
      expectNear(found.high, high, 1e-9, `high of ${share}, ${animals} animals`);
    }
    expect(effectiveOfR).toHaveLength(60);
  });

  it("are never narrower than the exact ones for so many animals watched to the end", () => {
    fc.assert(
      fc.property(fc.integer({ min: 2, max: 200 }), fc.double({ min: 0, max: 1, noNaN: true }), (animals, part) => {
        const lame = 1 + Math.floor(part * (animals - 2));
        const share = lame / animals;
        const exact = exactInterval(lame, animals, 0.95);
        for (const variance of [0, (share * (1 - share)) / animals, 0.1]) {
          const { low, high } = effectiveLimits(share, variance, animals, 0.95);
          expect(low).toBeLessThanOrEqual(exact.low + 1e-12);
          expect(high).toBeGreaterThanOrEqual(exact.high - 1e-12);
        }
      }),
    );
  });
});

// Golub & Van Loan, Matrix Computations, 4.2 (from memory): a matrix with a factor of whole numbers.
describe("Cholesky's factor", () => {
  const matrix = [
    [4, 12, -16],
    [12, 37, -43],
    [-16, -43, 98],
  ].map((row) => new Float64Array(row));

  it("is the known one, and solves", () => {
    const factor = cholesky(matrix) ?? [];
    expect(factor.map((row) => [...row])).toEqual([
      [2, 0, 0],
      [6, 1, 0],
      [-8, 5, 3],
    ]);
    const x = backward(factor, forward(factor, [4 + 24 - 48, 12 + 74 - 129, -16 - 86 + 294]));
    expect([...x]).toEqual([1, 2, 3]);
  });

  it("does not exist where nothing settles a direction", () => {
    expect(cholesky([new Float64Array([1, 1]), new Float64Array([1, 1])])).toBeUndefined();
  });
});

describe("watchedAnimals", () => {
  const watch = (records: Partial<CureRecords>) => [
    ...watchedAnimals({ treated: [46063], soundOn: [undefined], asOf: 46073, ...records }),
  ];

  it("takes the day of as_of itself for past", () => {
    expect(watch({ treated: [46063, 46073], soundOn: [46073, undefined] })).toEqual([
      { days: 10, end: "sound", lameUntil: undefined },
      { days: 0, end: "lame" },
    ]);
  });

  it("counts sound on the day of treatment as day 0 and those still lame to as_of", () => {
    expect(watch({ treated: [46063, 46063], soundOn: [46063, undefined] })).toEqual([
      { days: 0, end: "sound", lameUntil: undefined },
      { days: 10, end: "lame" },
    ]);
  });

  it("watches an animal until it leaves, at most to as_of, and one that was sound before to that day", () => {
    const end = (sound: number | undefined, left: number | undefined) => watch({ soundOn: [sound], leftOn: [left] })[0];
    expect(end(undefined, 46066)).toEqual({ days: 3, end: "left" });
    expect(end(undefined, 46063)).toEqual({ days: 0, end: "left" });
    expect(end(undefined, 46080)).toEqual({ days: 10, end: "lame" });
    expect(end(46066, 46066)).toMatchObject({ days: 3, end: "sound" });
    expect(end(46066, 46070)).toMatchObject({ days: 3, end: "sound" });
  });

  it("takes an animal for lame no longer than to the last look, where looks are recorded", () => {
    expect(watch({ lookedAgain: [46068] })).toEqual([{ days: 5, end: "lame" }]);
    expect(watch({ lookedAgain: [undefined] })).toEqual([{ days: 0, end: "lame" }]);
    expect(watch({ lookedAgain: [46066], leftOn: [46070] })).toEqual([{ days: 7, end: "left" }]);
    expect(watch({ lookedAgain: [46066], leftOn: [46080] })).toEqual([{ days: 3, end: "lame" }]);
  });

  it("takes an animal for sound at some day after the last look at which it was lame", () => {
    expect(watch({ soundOn: [46070], lookedAgain: [46066] })).toEqual([{ days: 7, end: "sound", lameUntil: 3 }]);
    // The look at which it was found sound, or none recorded: the day of finding stands.
    for (const look of [46070, 46072, undefined])
      expect(watch({ soundOn: [46070], lookedAgain: [look] })).toEqual([
        { days: 7, end: "sound", lameUntil: undefined },
      ]);
  });

  it.each([
    [{ leftOn: [46062] }, "left_on", "9 Feb 2026 is before the treatment on 10 Feb 2026"],
    [{ soundOn: [46068], leftOn: [46067] }, "sound_on", "15 Feb 2026 is after the animal left on 14 Feb 2026"],
    [{ soundOn: [46062] }, "sound_on", "9 Feb 2026 is before the treatment on 10 Feb 2026"],
    [{ asOf: 46062 }, "treated", "10 Feb 2026 is after as_of, 9 Feb 2026"],
    [{ soundOn: [46074] }, "sound_on", "21 Feb 2026 is after as_of, 20 Feb 2026"],
    [{ lookedAgain: [46062] }, "looked_again", "9 Feb 2026 is before the treatment on 10 Feb 2026"],
    [{ lookedAgain: [46074] }, "looked_again", "21 Feb 2026 is after as_of, 20 Feb 2026"],
    [{ lookedAgain: [46068], leftOn: [46067] }, "looked_again", "15 Feb 2026 is after the animal left on 14 Feb 2026"],
  ])("refuses %j", (records, argument, words) => {
    expect(() => watch(records)).toThrow(
      expect.objectContaining({ place: { argument, index: 0 }, sentence: expect.stringContaining(words) }),
    );
  });
});
