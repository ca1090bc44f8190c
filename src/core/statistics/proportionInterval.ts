import { Problem } from "../../cells/problem.ts";
import { exactInterval } from "./exactInterval.ts";
import { finiteFlockInterval } from "./finiteFlockInterval.ts";
import type { Interval } from "./interval.ts";
import { jeffreysInterval } from "./jeffreysInterval.ts";
import { wilsonInterval } from "./wilsonInterval.ts";

/** The methods for a flock whose size does not matter, by the word a user types. */
export const intervalMethods = {
  wilson: wilsonInterval,
  exact: exactInterval,
  jeffreys: jeffreysInterval,
} as const;

export type IntervalMethod = keyof typeof intervalMethods;

export interface IntervalChoice {
  /** 0 < confidence < 1. */
  readonly confidence: number;
  readonly method?: IntervalMethod | undefined;
  /** Sheep in the flock: given, the exact interval for a flock of that size is used whatever the method. */
  readonly flockSize?: number | undefined;
}

/**
 * The range within which the share lame lies.
 *
 * @param x lame sheep, whole number from 0 to n
 * @param n sheep seen, whole number from 1
 * @param choice confidence, method ("wilson" unless said), size of the flock
 * @returns shares
 * @throws Problem when more sheep were seen than the flock has
 * @example
 * proportionInterval(3, 20, { confidence: 0.95, flockSize: 100 }) // → { low: 0.05, high: 0.35 }
 */
export function proportionInterval(x: number, n: number, choice: IntervalChoice): Interval {
  const { confidence, method = "wilson", flockSize } = choice;
  if (flockSize === undefined) return intervalMethods[method](x, n, confidence);
  if (n > flockSize) {
    throw new Problem(
      `${flockSize} is fewer than the ${n} sheep seen; enter the size of the whole flock, or leave flock_size out when sheep were seen more than once`,
      { argument: "flock_size" },
    );
  }
  return finiteFlockInterval(x, n, flockSize, confidence);
}
