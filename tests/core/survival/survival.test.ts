import { readFileSync } from "node:fs";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { endsByDay, type Watched } from "../../../src/core/survival/endsByDay.ts";
import { kaplanMeier } from "../../../src/core/survival/kaplanMeier.ts";
import { soundBy } from "../../../src/core/survival/soundBy.ts";
import { soundCurve } from "../../../src/core/survival/soundCurve.ts";
import { watchedAnimals } from "../../../src/core/survival/watchedAnimals.ts";
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
  days.map((day, place) => ({ days: day, sound: sound[place] === 1 }));

describe("kaplanMeier", () => {
  it("gives what survfit with log-log limits gives, 570 values", () => {
    let compared = 0;
    for (const flock of reference.flocks) {
      const steps = kaplanMeier(endsByDay(watched(flock.days, flock.sound)), flock.confidence);
      expect(steps.map(({ day }) => day)).toEqual(flock.at);
      expect(steps.map(({ atRisk }) => atRisk)).toEqual(flock.atRisk);
      expect(steps.map(({ becameSound }) => becameSound)).toEqual(flock.becameSound);
      steps.forEach((step, place) => {
        expectNear(step.stillLame, flock.stillLame[place] as number, 1e-12, "share");
        const [low, high] = [flock.low[place], flock.high[place]];
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
    ...[6, 6, 6, 7, 10, 13, 16, 22, 23].map((days) => ({ days, sound: true })),
    ...[6, 9, 10, 11, 17, 19, 20, 25, 32, 32, 34, 35].map((days) => ({ days, sound: false })),
  ];

  it("gives the published remission curve", () => {
    const steps = kaplanMeier(endsByDay(sixMp), 0.95);
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

const animals = fc.array(fc.record({ days: fc.integer({ min: 0, max: 60 }), sound: fc.boolean() }), {
  minLength: 1,
  maxLength: 80,
});

describe("the curve of any flock", () => {
  it("is the plain share when every animal was watched to the end", () => {
    fc.assert(
      fc.property(
        fc.array(fc.integer({ min: 0, max: 60 }), { minLength: 1 }),
        fc.integer({ min: 0, max: 60 }),
        (days, by) => {
          const all = days.map((day) => ({ days: day, sound: true }));
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
          flock.filter(({ sound }) => sound).length,
        );
        curve.forEach(({ day, stillLame, limits, atRisk }, place) => {
          expect(stillLame).toBeLessThanOrEqual(curve[place - 1]?.stillLame ?? 1);
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
        const before = kaplanMeier(endsByDay(flock), 0.95).map(({ day, stillLame }) => [day, stillLame]);
        const later = [...flock, { days: 0, sound: false }];
        const after = kaplanMeier(endsByDay(later), 0.95).filter(({ day }) => day > 0);
        const ratio =
          (kaplanMeier(endsByDay(later), 0.95).find(({ day }) => day === 0)?.stillLame ?? 1) /
          (kaplanMeier(endsByDay(flock), 0.95).find(({ day }) => day === 0)?.stillLame ?? 1);
        // Only the steps of day 0 know the added animal.
        if (Number.isFinite(ratio))
          after.forEach(({ day, stillLame }) => {
            expect(stillLame).toBeCloseTo((before.find(([other]) => other === day)?.[1] ?? NaN) * ratio, 10);
          });
      }),
    );
  });
});

describe("watchedAnimals", () => {
  it("takes the day of as_of itself for past", () => {
    expect([...watchedAnimals([46063, 46073], [46073, undefined], 46073)]).toEqual([
      { days: 10, sound: true },
      { days: 0, sound: false },
    ]);
  });

  it("counts sound on the day of treatment as day 0 and those still lame to as_of", () => {
    expect([...watchedAnimals([46063, 46063], [46063, undefined], 46073)]).toEqual([
      { days: 0, sound: true },
      { days: 10, sound: false },
    ]);
  });

  it("watches an animal until it leaves, at most to as_of, and one that was sound before to that day", () => {
    const days = (sound: number | undefined, left: number | undefined) =>
      [...watchedAnimals([46063], [sound], 46073, [left])][0];
    expect(days(undefined, 46066)).toEqual({ days: 3, sound: false });
    expect(days(undefined, 46063)).toEqual({ days: 0, sound: false });
    expect(days(undefined, 46080)).toEqual({ days: 10, sound: false });
    expect(days(46066, 46066)).toEqual({ days: 3, sound: true });
    expect(days(46066, 46070)).toEqual({ days: 3, sound: true });
  });

  it.each([
    [undefined, 46062, "left_on", "9 Feb 2026 is before the treatment on 10 Feb 2026"],
    [46068, 46067, "sound_on", "15 Feb 2026 is after the animal left on 14 Feb 2026"],
  ])("refuses sound %s, left %s", (sound, left, argument, words) => {
    expect(() => [...watchedAnimals([46000, 46063], [46001, sound], 46073, [undefined, left])]).toThrow(
      expect.objectContaining({ place: { argument, index: 1 }, sentence: expect.stringContaining(words) }),
    );
  });

  it.each([
    [46063, 46062, 46073, "sound_on", "9 Feb 2026 is before the treatment on 10 Feb 2026"],
    [46063, undefined, 46062, "treated", "10 Feb 2026 is after as_of, 9 Feb 2026"],
    [46063, 46074, 46073, "sound_on", "21 Feb 2026 is after as_of, 20 Feb 2026"],
  ])("refuses %s, %s as of %s", (treated, sound, asOf, argument, words) => {
    expect(() => [...watchedAnimals([46000, treated], [46001, sound], asOf)]).toThrow(
      expect.objectContaining({ place: { argument, index: 1 }, sentence: expect.stringContaining(words) }),
    );
  });
});
