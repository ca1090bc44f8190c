import pow from "@stdlib/math-base-special-pow";
import { binomialDensity } from "../statistics/binomialDensity.ts";
import type { Interval } from "../statistics/interval.ts";
import { sumOf } from "../statistics/sumOf.ts";
import { runLength } from "./runSignals.ts";

/** A flock in which nothing changes. */
export interface SteadyFlock {
  /** Sheep seen at each gather. */
  readonly seen: number;
  /** The true share lame, which is the chart's centre too. */
  readonly share: number;
  /** How many gathers are charted. */
  readonly gathers: number;
  /** The chart's limits at that number of sheep. */
  readonly limits: Interval;
}

export interface FalseAlarms {
  /** Chance of a share beyond a limit. */
  readonly beyondLimits: number;
  /** Chance of eight in a row on one side. */
  readonly runs: number;
  /** Chance of either. */
  readonly either: number;
}

/**
 * How likely the chart gives at least one false alarm: exactly, by following the length of the run from gather to gather.
 *
 * @returns chances, 0 to 1
 * @example
 * falseAlarmChance({ seen: 1, share: 0.5, gathers: 8, limits: { low: 0, high: 1 } }).runs // → 0.0078125
 */
export function falseAlarmChance(flock: SteadyFlock): FalseAlarms {
  const chances = oneGather(flock);
  const silent = { above: 0, below: 0, on: 0 };
  const anywhere = chances.within;
  for (const side of ["above", "below", "on"] as const) silent[side] = anywhere[side] + chances.beyond[side];
  const within = anywhere.above + anywhere.below + anywhere.on;
  return {
    beyondLimits: 1 - pow(within, flock.gathers),
    runs: 1 - noRun(silent, flock.gathers),
    either: 1 - noRun(anywhere, flock.gathers),
  };
}

interface Sides {
  above: number;
  below: number;
  on: number;
}

function oneGather({ seen, share, limits }: SteadyFlock): { readonly within: Sides; readonly beyond: Sides } {
  const within: Sides = { above: 0, below: 0, on: 0 };
  const beyond: Sides = { above: 0, below: 0, on: 0 };
  for (let x = 0; x <= seen; x++) {
    const found = x / seen;
    const side = found > share ? "above" : found < share ? "below" : "on";
    const part = found > limits.high || found < limits.low ? beyond : within;
    part[side] += binomialDensity(x, seen, share);
  }
  return { within, beyond };
}

/** The chance that no run of eight comes up, when a gather falls on each side with the given chances. */
function noRun({ above, below, on }: Sides, gathers: number): number {
  // Place k: the chance that the last k gathers, and no more, lie on that side; 0: the last one was on the centre.
  let up = new Array<number>(runLength).fill(0);
  let down = new Array<number>(runLength).fill(0);
  let none = 1;
  for (let gather = 0; gather < gathers; gather++) {
    const [anyUp, anyDown] = [sumOf(up), sumOf(down)];
    const next = (run: readonly number[], side: number, others: number) =>
      run.map((_, k) => (k === 0 ? 0 : side * (k === 1 ? others : (run[k - 1] ?? 0))));
    [up, down, none] = [
      next(up, above, none + anyDown),
      next(down, below, none + anyUp),
      on * (none + anyUp + anyDown),
    ];
  }
  return none + sumOf(up) + sumOf(down);
}
