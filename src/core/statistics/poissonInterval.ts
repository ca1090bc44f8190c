import ln from "@stdlib/math-base-special-ln";
import { gammaQuantile } from "./gammaQuantile.ts";
import type { Interval } from "./interval.ts";

/**
 * Garwood's exact interval for the number of cases expected, when `cases` came.
 *
 * @param cases whole number from 0
 * @param confidence 0 < confidence < 1
 * @returns numbers of cases
 * @source Garwood 1936, Biometrika 28:437
 * @example
 * poissonInterval(0, 0.95) // → { low: 0, high: 3.688879454… }
 */
export function poissonInterval(cases: number, confidence: number): Interval {
  const tail = (1 - confidence) / 2;
  return {
    low: cases === 0 ? 0 : gammaQuantile("lower", tail, cases),
    high: cases === 0 ? -ln(tail) : gammaQuantile("upper", tail, cases + 1),
  };
}
