import { type GatherSpread, spreadOf } from "./gatherSpread.ts";
import type { PlacedGathers } from "./gathersByPlace.ts";

/**
 * The spread between the gathers of each of many groups, as `gatherSpread` gives it for one: the sums of all groups grow
 * side by side while the rows are gone through, so that no group needs a list of its rows.
 *
 * @param places how many groups there are
 * @returns for each group its spread; its sums are 0 where no sheep was seen
 * @example
 * spreadsByPlace({ placeOf: [0, 1, 0], lame: [4, 9, 12], seen: [100, 50, 100] }, 2)[0]
 * // → { lame: 16, seen: 200, gathers: 2, weighty: 2, inflation: 4.06… }
 */
export function spreadsByPlace({ placeOf, lame, seen }: PlacedGathers, places: number): readonly GatherSpread[] {
  const sums = () => new Float64Array(places);
  const [lameIn, seenIn, sizesIn, gathersIn, squaresIn] = [sums(), sums(), sums(), sums(), sums()];
  for (let row = 0; row < seen.length; row++) {
    const place = placeOf[row] as number;
    const n = seen[row] as number;
    lameIn[place] = (lameIn[place] as number) + (lame[row] as number);
    seenIn[place] = (seenIn[place] as number) + n;
    sizesIn[place] = (sizesIn[place] as number) + n * n;
    // One in which no sheep was seen says nothing.
    if (n > 0) gathersIn[place] = (gathersIn[place] as number) + 1;
  }
  const shares = lameIn.map((count, place) => count / (seenIn[place] as number));
  for (let row = 0; row < seen.length; row++) {
    const place = placeOf[row] as number;
    const off = (lame[row] as number) - (seen[row] as number) * (shares[place] as number);
    squaresIn[place] = (squaresIn[place] as number) + off * off;
  }
  return Array.from({ length: places }, (_, place) =>
    spreadOf({
      lame: lameIn[place] as number,
      seen: seenIn[place] as number,
      sizes: sizesIn[place] as number,
      gathers: gathersIn[place] as number,
      squares: squaresIn[place] as number,
    }),
  );
}
