import { type CurveStep, kaplanMeier, type Watched } from "./kaplanMeier.ts";

/**
 * The curve of the share still lame, ready to draw: it begins on day 0 and ends on the last day watched.
 *
 * @returns no rows when no animal was treated
 * @see kaplanMeier for method and sources
 * @example
 * soundCurve([{ days: 3, sound: true }, { days: 5, sound: false }], 0.95).map(({ day, stillLame }) => [day, stillLame])
 * // → [[0, 1], [3, 0.5], [5, 0.5]]
 */
export function soundCurve(animals: readonly Watched[], confidence: number): readonly CurveStep[] {
  if (animals.length === 0) return [];
  const steps = [...kaplanMeier(animals, confidence)];
  const lastDay = animals.reduce((most, { days }) => Math.max(most, days), 0);
  const stay = (day: number, like: CurveStep | undefined): CurveStep => ({
    day,
    atRisk: animals.filter(({ days }) => days >= day).length,
    becameSound: 0,
    stillLame: like?.stillLame ?? 1,
    limits: like?.limits,
  });
  if (steps[0]?.day !== 0) steps.unshift(stay(0, undefined));
  if (steps.at(-1)?.day !== lastDay) steps.push(stay(lastDay, steps.at(-1)));
  return steps;
}
