import { type NameColumn, placesByName } from "./placesByName.ts";

/** The sheep counted under one name. */
export interface NamedCount {
  /** As first written. */
  readonly name: string;
  readonly lame: number;
  readonly seen: number;
}

/**
 * Adds up lame and seen sheep by name, in order of first appearance.
 *
 * Capitals and spaces do not make another name: "Low Field" and "low field " are one.
 *
 * @param column the names, one a row
 * @param lame lame sheep a row
 * @param seen sheep seen a row
 * @throws Problem when the columns differ in length
 * @example
 * tallyByName({ argument: "flocks", names: ["A", "a "] }, [1, 2], [10, 10]) // → [{ name: "A", lame: 3, seen: 20 }]
 */
export function tallyByName(
  column: NameColumn,
  lame: ArrayLike<number>,
  seen: ArrayLike<number>,
): readonly NamedCount[] {
  const { names, placeOf } = placesByName(column, seen.length);
  const [lameIn, seenIn] = [new Float64Array(names.length), new Float64Array(names.length)];
  for (let row = 0; row < placeOf.length; row++) {
    const place = placeOf[row] as number;
    lameIn[place] = (lameIn[place] as number) + (lame[row] ?? 0);
    seenIn[place] = (seenIn[place] as number) + (seen[row] ?? 0);
  }
  return names.map((name, place) => ({ name, lame: lameIn[place] as number, seen: seenIn[place] as number }));
}
