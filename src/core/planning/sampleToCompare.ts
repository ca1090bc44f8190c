import { Problem } from "../../cells/problem.ts";
import { normalScore } from "../statistics/normalScore.ts";
import { changePower } from "./changePower.ts";
import { wholeUp } from "./wholeUp.ts";

export interface ComparePlan {
  /** The share lame at the first time or in the first flock, 0 to 1. */
  readonly before: number;
  /** The share at the second time or in the other flock, 0 to 1. */
  readonly after: number;
  /** Wanted chance of showing the change, 0 < power < 1. */
  readonly power: number;
  /** 0 < confidence < 1; the test's level is what is left to 1. */
  readonly confidence: number;
}

/**
 * How many sheep to look at, each time or in each flock, for a change to show in Fisher's exact test.
 *
 * Exact up to 5,000 sheep a look: the smallest number from which on every number, as far as a hundredth more, has the power
 * wanted (with counts in whole sheep the power of a few more can be a little less). Beyond, the approximation of
 * Casagrande, Pike and Smith, which is close there.
 *
 * @returns sheep at each look
 * @throws Problem when the two shares are equal, or too near for any number of sheep
 * @source Fisher 1935 (test); Casagrande, Pike & Smith 1978, Biometrics 34:483 (approximation)
 * @example
 * sampleToCompare({ before: 0.1, after: 0.02, power: 0.8, confidence: 0.95 }) // → 150
 */
export function sampleToCompare({ before, after, power, confidence }: ComparePlan): number {
  if (before === after) {
    throw new Problem(`${after} is no change; enter the share after the change that is to be seen`, {
      argument: "after",
    });
  }
  const level = 1 - confidence;
  const about = approximate({ before, after, power, confidence });
  if (about > mostSheep) {
    throw new Problem(`${after} is too near to ${before} for any number of sheep to tell; enter a greater change`, {
      argument: "after",
    });
  }
  if (about > mostExact) return wholeUp(about);
  const enough = (n: number): boolean => changePower(n, before, after, level) >= power - 1e-12;
  return from(enough, wholeUp(about));
}

const mostExact = 5000;
const mostSheep = 1e9;

/** The smallest number from which on `enough` holds for as far as the power can still dip, looked for about a guess. */
function from(enough: (n: number) => boolean, guess: number): number {
  const known = new Map<number, boolean>();
  const holds = (n: number): boolean => {
    const found = known.get(n) ?? enough(n);
    known.set(n, found);
    return found;
  };
  let n = guess;
  for (let short = lastShort(holds, n); short !== undefined; short = lastShort(holds, n)) n = short + 1;
  while (n > 1 && holds(n - 1)) n--;
  return n;
}

/** The last number that is not enough between n and the end of where the power can still dip. */
function lastShort(holds: (n: number) => boolean, n: number): number | undefined {
  for (let further = n + Math.max(3, Math.ceil(n / 100)); further >= n; further--) if (!holds(further)) return further;
  return undefined;
}

/** Casagrande, Pike and Smith's number of sheep. */
function approximate({ before, after, power, confidence }: ComparePlan): number {
  const z = normalScore(confidence);
  const zPower = power >= 0.5 ? normalScore(2 * power - 1) : -normalScore(1 - 2 * power);
  const mean = (before + after) / 2;
  const gap = Math.abs(after - before);
  const reach = z * Math.sqrt(2 * mean * (1 - mean)) + zPower * Math.sqrt(before * (1 - before) + after * (1 - after));
  const plain = (Math.max(reach, 0) / gap) * (Math.max(reach, 0) / gap);
  const root = 1 + Math.sqrt(1 + (4 * gap) / Math.max(reach * reach, 1e-9));
  return (plain / 4) * root * root;
}
