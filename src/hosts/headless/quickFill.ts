import type { UniverParts } from "./univerParts.ts";

type LookUp = UniverParts["formula"]["CELL_INVERTED_INDEX_CACHE"];
type Stored = Map<string, Map<string, Map<number, unknown>>>;

const mended = new WeakSet<LookUp>();

/**
 * Lets a column be filled by a formula in one pass.
 *
 * The engine remembers which rows of a column hold a value, for COUNTIF and its kind. For every cell that a formula
 * fills it goes through all values of the column to strike out the old one, so a spill of 10,000 names took 5 s.
 * Here the column is forgotten instead, and read again when something looks it up.
 */
export function quickFill({ formula }: UniverParts): void {
  const lookUp = formula.CELL_INVERTED_INDEX_CACHE;
  if (mended.has(lookUp)) return;
  mended.add(lookUp);
  const remember = lookUp.set.bind(lookUp);
  const { _cache, _continueBuildingCache } = lookUp as unknown as Readonly<
    Record<"_cache" | "_continueBuildingCache", Stored>
  >;
  lookUp.set = (unitId, sheetId, column, value, row, filled = false) => {
    if (!filled) return remember(unitId, sheetId, column, value, row);
    for (const stored of [_cache, _continueBuildingCache]) stored.get(unitId)?.get(sheetId)?.delete(column);
  };
}
