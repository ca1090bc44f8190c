/**
 * Whether two words differ by one slip of the hand: a letter put in, left out or replaced, or two neighbours swapped.
 *
 * @example
 * isOneSlip("abcess", "abscess") // → true
 * isOneSlip("footort", "footrot") // → true
 * isOneSlip("scald", "scald") // → false
 */
export function isOneSlip(one: string, other: string): boolean {
  if (one === other) return false;
  if (one.length > other.length) return isOneSlip(other, one);
  let at = 0;
  while (at < one.length && one[at] === other[at]) at++;
  if (one.length + 1 === other.length) return one.slice(at) === other.slice(at + 1);
  if (one.length !== other.length) return false;
  const swapped = one[at] === other[at + 1] && one[at + 1] === other[at];
  return one.slice(at + 1) === other.slice(at + 1) || (swapped && one.slice(at + 2) === other.slice(at + 2));
}
