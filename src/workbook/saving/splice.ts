/** Text to put in the place of what stands between two places. */
export interface Splice {
  readonly start: number;
  readonly end: number;
  readonly text: string;
}

/**
 * A text with pieces exchanged. Insertions at one place keep the order in which they are given.
 *
 * @throws RangeError when two exchanges overlap
 * @example
 * splice("abcd", [{ start: 1, end: 3, text: "-" }]) // → "a-d"
 */
export function splice(text: string, splices: readonly Splice[]): string {
  const ordered = inOrder(splices);
  const pieces: string[] = [];
  let at = 0;
  for (const { start, end, text: piece } of ordered) {
    if (start < at) throw new RangeError("two changes of one part overlap");
    pieces.push(text.slice(at, start), piece);
    at = end;
  }
  pieces.push(text.slice(at));
  return pieces.join("");
}

/** Mostly they are so already: a sheet is gone through from above. */
function inOrder(splices: readonly Splice[]): readonly Splice[] {
  const difference = (one: Splice, other: Splice): number => one.start - other.start || one.end - other.end;
  const isOrdered = splices.every((one, at) => at === 0 || difference(splices[at - 1] as Splice, one) <= 0);
  return isOrdered ? splices : [...splices].sort(difference);
}
