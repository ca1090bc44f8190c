/**
 * Whether two names, as `nameKey` gives them, may mean one group: they are the same, one letter was slipped in, left out
 * or mistaken, or one says more than the other ("lambs" and "store lambs"). Other numbers are other groups.
 *
 * @see common practice, no source
 * @example
 * mayBeGroup("lambs", "lamb") // → true
 * mayBeGroup("lambs pen 1", "lambs pen 2") // → false
 */
export function mayBeGroup(one: string, other: string): boolean {
  if (one === other) return true;
  const [a, b] = [wordsOf(one), wordsOf(other)];
  if (saysNoMore(a, b) || saysNoMore(b, a)) return true;
  return digitsOf(one) === digitsOf(other) && isOneLetterApart(a.join(""), b.join(""));
}

const wordsOf = (name: string): readonly string[] => name.match(/\p{L}+|\p{N}+/gu) ?? [];

const digitsOf = (name: string): string => name.replace(/\D/g, "");

const saysNoMore = (words: readonly string[], of: readonly string[]): boolean =>
  words.length > 0 && words.every((word) => of.includes(word));

function isOneLetterApart(one: string, other: string): boolean {
  const [short, long] = one.length <= other.length ? [one, other] : [other, one];
  if (short.length < 3 || long.length - short.length > 1) return false;
  let same = 0;
  while (same < short.length && short[same] === long[same]) same++;
  return short.slice(same + (short.length === long.length ? 1 : 0)) === long.slice(same + 1);
}
