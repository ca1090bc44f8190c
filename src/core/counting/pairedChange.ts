import { Problem } from "../../cells/problem.ts";
import { binomialTwoSided } from "../statistics/binomialTwoSided.ts";
import { normalScore } from "../statistics/normalScore.ts";
import type { PrevalenceChange } from "./prevalenceChange.ts";

/** The same sheep looked at twice. */
export interface PairedLooks {
  /** Sound at the first look and lame at the second. */
  readonly becameLame: number;
  /** Lame at the first look and sound at the second. */
  readonly becameSound: number;
  /** Looked at both times; those that stayed as they were are the rest. */
  readonly seen: number;
}

/**
 * How much the share lame changed among sheep that were looked at both times: Tango's score interval and McNemar's exact p.
 *
 * Only sheep that changed tell of a change; those that stayed lame or sound make it surer that it is small.
 *
 * @param looks counts of sheep
 * @param confidence 0 < confidence < 1
 * @returns share at the second look less share at the first, with its limits, and p
 * @throws Problem when more changed than were seen, or none was seen
 * @source Tango 1998, Stat Med 17:891 (limits); McNemar 1947, Psychometrika 12:153 (p, exact)
 * @example
 * pairedChange({ becameLame: 7, becameSound: 1, seen: 21 }, 0.95)
 * // → { change: 0.2857142857…, low: 0.0260030324…, high: 0.5172322764…, p: 0.0703125 }
 */
export function pairedChange({ becameLame, becameSound, seen }: PairedLooks, confidence: number): PrevalenceChange {
  const changed = becameLame + becameSound;
  if (seen === 0)
    throw new Problem("0 sheep looked at both times show no change; enter how many were", { argument: "seen" });
  if (changed > seen) {
    throw new Problem(
      `${seen} is fewer than the ${changed} that became lame or sound; enter all sheep looked at both times`,
      { argument: "seen" },
    );
  }
  const z = normalScore(confidence);
  const change = (becameLame - becameSound) / seen;
  return {
    change,
    low: limit(becameLame, becameSound, seen, { z, side: -1 }),
    high: limit(becameLame, becameSound, seen, { z, side: 1 }),
    p: changed === 0 ? 1 : binomialTwoSided(becameLame, changed, 0.5),
  };
}

/** The difference at which the score is z standard deviations, found by halving: it falls all the way. */
function limit(b: number, c: number, n: number, { z, side }: { readonly z: number; readonly side: 1 | -1 }): number {
  const change = (b - c) / n;
  let [inside, outside]: [number, number] = [change, side];
  if (Math.abs(score(b, c, n, outside)) <= z) return outside;
  for (let turn = 0; turn < 200; turn++) {
    const middle = (inside + outside) / 2;
    if (middle === inside || middle === outside) break;
    if (Math.abs(score(b, c, n, middle)) <= z) inside = middle;
    else outside = middle;
  }
  return inside;
}

function score(b: number, c: number, n: number, difference: number): number {
  const excess = b - c - n * difference;
  if (excess === 0) return 0;
  // The likeliest share that became sound, were this the true difference: the larger root of 2n q² + linear q + rest.
  const linear = (2 * n - b + c) * difference - b - c;
  const rest = -c * difference * (1 - difference);
  const root = Math.sqrt(Math.max(linear * linear - 8 * n * rest, 0));
  const sound = linear > 0 ? (-2 * rest) / (root + linear) : (root - linear) / (4 * n);
  const variance = n * (2 * sound + difference * (1 - difference));
  return variance <= 0 ? Math.sign(excess) * Infinity : excess / Math.sqrt(variance);
}
