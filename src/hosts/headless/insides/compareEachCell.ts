import type { UniverParts } from "../univerParts.ts";

type LookUp = UniverParts["formula"]["CELL_INVERTED_INDEX_CACHE"];

const mended = new WeakSet<LookUp>();

/**
 * Lets every comparison look at the cells themselves.
 *
 * After the first comparison with a column the engine remembers which rows hold which value, and answers the next from
 * memory. That memory takes 0 for an empty text, an empty text for 0, and "5" for 5: `IF(A1="",…)` then called a 0
 * blank, or not, depending on which formula was worked out before. Filling it for every cell of a spill also took time
 * with the square of the rows.
 */
export function compareEachCell({ formula }: UniverParts): void {
  const lookUp = formula.CELL_INVERTED_INDEX_CACHE;
  if (mended.has(lookUp)) return;
  mended.add(lookUp);
  // No rows remembered: the engine then goes through the range.
  lookUp.setContinueBuildingCache = () => undefined;
  // Nothing would read it.
  lookUp.set = () => undefined;
}
