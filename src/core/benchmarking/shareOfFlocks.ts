import { nothingToReport, Problem } from "../../cells/problem.ts";
import type { NamedCount } from "../counting/tallyByName.ts";

/**
 * The share of all flocks together, for which sheep of more than one must have been seen: a flock without a look is
 * nothing to compare with.
 *
 * @param mend what the user can do about a single flock
 * @throws Problem when sheep of a single flock were seen; #N/A when no sheep were seen
 * @example
 * shareOfFlocks([{ name: "A", lame: 1, seen: 10 }, { name: "B", lame: 3, seen: 10 }], "give two") // → 0.2
 */
export function shareOfFlocks(tally: readonly NamedCount[], mend: string): number {
  const lame = tally.reduce((sum, flock) => sum + flock.lame, 0);
  const seen = tally.reduce((sum, flock) => sum + flock.seen, 0);
  if (seen === 0) throw nothingToReport("no sheep were seen, so there is nothing to compare", { argument: "seen" });
  if (tally.filter((flock) => flock.seen > 0).length === 1) {
    throw new Problem(`one flock alone cannot be compared with itself; ${mend}`, {
      argument: "flocks",
    });
  }
  return lame / seen;
}
