import { exactCoverage } from "../../core/statistics/exactCoverage.ts";
import type { Interval } from "../../core/statistics/interval.ts";
import { type IntervalMethod, intervalMethods } from "../../core/statistics/proportionInterval.ts";

/** The sheep looked at for which the pages show coverage. */
export const coverageSizes = [20, 60, 200, 420] as const;

export const nominal = 0.95;

/** A method's interval for 0, 1, … n lame of n. */
export const intervalsFor = (method: IntervalMethod, n: number): readonly Interval[] =>
  Array.from({ length: n + 1 }, (_, x) => intervalMethods[method](x, n, nominal));

/** How finely true shares are tried: middles of equal parts of 0 to ½; the other half is its mirror image. */
const parts = 2000;

export interface Coverage {
  readonly method: IntervalMethod;
  readonly n: number;
  /** Over all true shares, each as likely as another. */
  readonly mean: number;
  readonly least: number;
  /** The true share at which it is least. */
  readonly leastAt: number;
  /** The part of the true shares that are covered less often than 93 in 100. */
  readonly poor: number;
}

/** Mean and least coverage of a method at n sheep, exact at each share tried. */
export function coverageOf(method: IntervalMethod, n: number): Coverage {
  const intervals = intervalsFor(method, n);
  const at = (share: number) => ({ share, covered: exactCoverage(intervals, share) });
  const grid = Array.from({ length: parts }, (_, part) => at((part + 0.5) / (2 * parts)));
  // Coverage falls where an interval ends, so the dips lie just outside the ends.
  const dips = intervals
    .flatMap(({ low, high }) => [low * (1 - 1e-9), high * (1 + 1e-9)])
    .filter((p) => p > 0 && p <= 0.5);
  const all = [...grid, ...dips.map(at)];
  const least = all.reduce((lowest, one) => (one.covered < lowest.covered ? one : lowest));
  return {
    method,
    n,
    mean: grid.reduce((sum, { covered }) => sum + covered, 0) / parts,
    least: least.covered,
    leastAt: least.share,
    poor: grid.filter(({ covered }) => covered < 0.93).length / parts,
  };
}
