import type { ICellData, Nullable } from "@univerjs/core";

/**
 * Whether two cells of the engine hold the same for every formula that reads them; where it is not certain they do not.
 *
 * @example
 * sameContent({ v: "", t: 1 }, undefined) // → false
 */
export function sameContent(one: Nullable<ICellData>, other: Nullable<ICellData>): boolean {
  if (isNothing(one) || isNothing(other)) return isNothing(one) && isNothing(other);
  return one?.v === other?.v && one?.t === other?.t && (one?.p === undefined) === (other?.p === undefined);
}

const isNothing = (cell: Nullable<ICellData>): boolean =>
  !cell || ((cell.v === undefined || cell.v === null) && !cell.p);
