import ln from "@stdlib/math-base-special-ln";
import log1p from "@stdlib/math-base-special-log1p";
import type { Run } from "./flockTallies.ts";

/** Sums over j, each place as often as flocks have more than j. */
export interface RisingSums {
  /** Of ln(base + j spread). */
  readonly logs: number;
  /** Of 1 / (base + j spread). */
  readonly inverses: number;
  /** Of 1 / (base + j spread)². */
  readonly squares: number;
}

/** Places up to here, and runs shorter than this, are added up one by one. */
const long = 64;

/**
 * Sums of logarithms and inverses of base + j spread over the places of a tally.
 *
 * Long runs of far places are taken by the Euler–Maclaurin formula, so that the work does not grow with the sheep of a
 * flock. Relative accuracy about 1e-13.
 *
 * @param base above 0
 * @param spread 0 or more
 * @source Euler–Maclaurin formula: Abramowitz & Stegun 23.1.30 (from memory)
 * @example
 * risingSums([{ from: 0, to: 2, flocks: 3 }], 1, 1).inverses // → 4.5
 */
export function risingSums(runs: readonly Run[], base: number, spread: number): RisingSums {
  let [logs, inverses, squares] = [0, 0, 0];
  for (const { from, to, flocks } of runs) {
    const direct = to - from < 2 * long ? to : Math.min(Math.max(from, long), to);
    for (let j = from; j < direct; j++) {
      const inverse = 1 / (base + j * spread);
      logs -= flocks * ln(inverse);
      inverses += flocks * inverse;
      squares += flocks * inverse * inverse;
    }
    if (direct === to) continue;
    const rest = farRun(base + direct * spread, spread, to - direct);
    logs += flocks * rest.logs;
    inverses += flocks * rest.inverses;
    squares += flocks * rest.squares;
  }
  return { logs, inverses, squares };
}

/** The sums over `places` places from the value `first` on. */
function farRun(first: number, spread: number, places: number): RisingSums {
  const last = first + places * spread;
  const growth = (places * spread) / first;
  const log = log1p(growth);
  const [p, q] = [1 / first, 1 / last];
  const [p2, q2] = [p * p, q * q];
  const gap = spread * spread;
  // Integral, half the ends, and the corrections by the odd derivatives at the ends.
  return {
    logs:
      places * ln(first) +
      (spread === 0 ? 0 : ((1 + growth) * log - growth) * (first / spread)) -
      log / 2 +
      (spread * (q - p)) / 12 -
      (spread * gap * (q * q2 - p * p2)) / 360,
    inverses:
      (spread === 0 ? places * p : log / spread) -
      (q - p) / 2 -
      (spread * (q2 - p2)) / 12 +
      (spread * gap * (q2 * q2 - p2 * p2)) / 120,
    squares:
      places * p * q -
      (q2 - p2) / 2 -
      (spread * (q * q2 - p * p2)) / 6 +
      (spread * gap * (q * q2 * q2 - p * p2 * p2)) / 30,
  };
}
