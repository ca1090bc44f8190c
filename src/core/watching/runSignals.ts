/** So many in a row on one side of the centre are a signal (Western Electric 1956, Statistical Quality Control Handbook). */
export const runLength = 8;

/**
 * Where a run of eight or more on one side of the centre stands, in words.
 *
 * A share on the centre ends a run, and so does one that has no centre. "Six in a row rising" and the rules of warning lines
 * are left out: they add more false alarms than they find changes.
 *
 * @param shares in order of time
 * @param centres the share expected at each, undefined where none is known
 * @returns a word for each share, undefined where there is no run
 * @example
 * runSignals([1, 1, 1, 1, 1, 1, 1, 1], [0, 0, 0, 0, 0, 0, 0, 0])[7] // → "eight in a row above the centre"
 */
export function runSignals(
  shares: readonly number[],
  centres: readonly (number | undefined)[],
): readonly (string | undefined)[] {
  let run = 0;
  return shares.map((share, index) => {
    const side = Math.sign(share - (centres[index] ?? share));
    run = side === Math.sign(run) ? run + side : side;
    if (Math.abs(run) < runLength) return undefined;
    return `eight in a row ${run > 0 ? "above" : "below"} the centre`;
  });
}
