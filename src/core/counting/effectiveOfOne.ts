import { effectiveOf } from "./effectiveSeen.ts";
import { joinedInflation } from "./gatherSpread.ts";

/**
 * To how many separate looks at a sheep one gather amounts, when it is to speak for the long run: by the spread that is
 * supposed between gathers before any is seen, since one gather shows none.
 *
 * @param seen sheep seen at the gather
 * @param confidence 0 < confidence < 1
 * @returns sheep, a fraction
 * @see effectiveSeen for several gathers
 * @example
 * effectiveOfOne(200, 0.95) // → 10.88356636…
 */
export const effectiveOfOne = (seen: number, confidence: number): number =>
  effectiveOf({ seen, weighty: 1, inflation: joinedInflation(1, 0, seen) }, confidence);
