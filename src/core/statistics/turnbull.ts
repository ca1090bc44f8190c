import type { CurveStep } from "./cureSteps.ts";
import { effectiveLimits } from "./effectiveLimits.ts";
import { animalsIn, type Ends } from "./endsByDay.ts";
import { type SpanClass, spanMasses } from "./spanMasses.ts";

/**
 * The share not sound by days since treatment, where of some animals found sound the day is known only to lie after the last
 * look at which they were lame. Those that left lame are a competing end, as in aalenJohansen.
 *
 * Between two looks the records do not say when; the share changes on the day of finding, the latest it can be. The
 * variance is from the information matrix, which is a little small where looks lie some days apart; so the limits are
 * those of effectiveLimits, which are wider than those on the log(−log) scale.
 *
 * @param confidence 0 < confidence < 1
 * @returns a step for each day on which at least one was found sound or left lame, in order
 * @see spanMasses for method and sources
 * @example
 * turnbull([{ day: 7, ended: 2, becameSound: 2, leftLame: 0, foundAfter: [{ lameUntil: 2, animals: 1 }] }], 0.95)
 * // → [{ day: 7, atRisk: 2, becameSound: 2, stillLame: 0, leftLame: 0, variance: 0, limits: undefined }]
 */
export function turnbull(ends: readonly Ends[], confidence: number): readonly CurveStep[] {
  const { found, left, later, classes } = spans(ends);
  const points = found.length + left.length + (later ? 1 : 0);
  const { masses, varianceBefore } = spanMasses(points, classes);
  const sumOf = (from: number, to: number): number => masses.subarray(from, to).reduce((sum, mass) => sum + mass, 0);
  const animals = animalsIn(ends);
  let watched = animals;
  const steps: CurveStep[] = [];
  for (const { day, ended, becameSound, leftLame } of ends) {
    const atRisk = watched;
    watched -= ended;
    if (becameSound + leftLame === 0) continue;
    const sound = countUpTo(found, day);
    const gone = countUpTo(left, day);
    // Added up from what is left, so that a small share keeps its digits.
    const open = sound === 0 ? 1 : sumOf(sound, points);
    const stillLame = open < 1e-12 ? 0 : open;
    const variance = varianceBefore(sound);
    steps.push({
      day,
      atRisk,
      becameSound,
      stillLame,
      leftLame: sumOf(found.length, found.length + gone),
      variance,
      limits:
        variance === undefined || stillLame === 0 || stillLame === 1
          ? undefined
          : effectiveLimits(stillLame, variance, animals, confidence),
    });
  }
  return steps;
}

/** How many of the days in order are `day` or before. */
function countUpTo(days: readonly number[], day: number): number {
  let [low, high] = [0, days.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((days[middle] as number) <= day) low = middle + 1;
    else high = middle;
  }
  return low;
}

/**
 * The days that can keep a mass, and what is known of the animals in terms of them. Points stand in the order: found sound,
 * left lame, later than all.
 */
function spans(ends: readonly Ends[]) {
  const exact = ({ becameSound, foundAfter }: Ends): number =>
    becameSound - foundAfter.reduce((sum, { animals }) => sum + animals, 0);
  const watchedOnly = ({ ended, becameSound, leftLame }: Ends): number => ended - becameSound - leftLame;
  // Where a stretch of doubt begins: after the last look at an animal that was lame then.
  const starts = ends.flatMap((end) => [
    ...end.foundAfter.map(({ lameUntil }) => lameUntil),
    ...(exact(end) > 0 ? [end.day - 1] : []),
    ...(watchedOnly(end) > 0 ? [end.day] : []),
  ]);
  starts.sort((one, other) => one - other);
  const findings = ends.filter(({ becameSound }) => becameSound > 0).map(({ day }) => day);
  // A finding keeps a mass only where some doubt begins between the finding before and it (an innermost stretch).
  const found = findings.filter((day, index) => {
    const start = starts[countUpTo(starts, day - 1) - 1];
    return start !== undefined && (index === 0 || start >= (findings[index - 1] as number));
  });
  const left = ends.filter(({ leftLame }) => leftLame > 0).map(({ day }) => day);
  const lastWatched = ends.filter((end) => watchedOnly(end) > 0).at(-1)?.day ?? -1;
  const later = lastWatched >= Math.max(found.at(-1) ?? -1, left.at(-1) ?? -1);
  const leftFrom = found.length;
  const points = leftFrom + left.length + (later ? 1 : 0);
  const classes: SpanClass[] = [];
  const add = (animals: number, ...stretches: SpanClass["stretches"]) => {
    if (animals > 0) classes.push({ animals, stretches: stretches.filter(([from, to]) => from < to) });
  };
  for (const end of ends) {
    const upTo = countUpTo(found, end.day);
    for (const { lameUntil, animals } of end.foundAfter) add(animals, [countUpTo(found, lameUntil), upTo]);
    add(exact(end), [countUpTo(found, end.day - 1), upTo]);
    const gone = leftFrom + countUpTo(left, end.day);
    add(end.leftLame, [gone - 1, gone]);
    add(watchedOnly(end), [upTo, leftFrom], [gone, points]);
  }
  return { found, left, later, classes };
}
