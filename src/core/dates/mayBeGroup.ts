import { isOneSlip } from "../words/isOneSlip.ts";

/**
 * Whether two names, as `nameKey` gives them, may mean one group: they are the same, one letter was slipped in, left out,
 * mistaken or swapped with its neighbour, one says more than the other ("lambs" and "store lambs"), or one leaves open
 * which group it is ("all", "whole flock", "unknown", "lambs?"). Other numbers are other groups.
 *
 * @see common practice, no source
 * @example
 * mayBeGroup("lambs", "lamb") // → true
 * mayBeGroup("lambs", "labms") // → true
 * mayBeGroup("lambs", "whole flock") // → true
 * mayBeGroup("lambs pen 1", "lambs pen 2") // → false
 */
export function mayBeGroup(one: string, other: string): boolean {
  if (one === other) return true;
  if (isAnyGroup(one) || isAnyGroup(other)) return true;
  const [a, b] = [wordsOf(one), wordsOf(other)];
  if (saysNoMore(a, b) || saysNoMore(b, a)) return true;
  return digitsOf(one) === digitsOf(other) && isNearly(a.join(""), b.join(""));
}

const ofAnyGroup = new Set(
  "a all animals any both check entire every everybody everyone everything farm flock flocks groups known lot mixed n none not of sheep several sure the them unknown various whole".split(
    " ",
  ),
);

const isAnyGroup = (name: string): boolean => name.includes("?") || wordsOf(name).every((word) => ofAnyGroup.has(word));

const wordsOf = (name: string): readonly string[] => name.match(/\p{L}+|\p{N}+/gu) ?? [];

const digitsOf = (name: string): string => name.replace(/\D/g, "");

const saysNoMore = (words: readonly string[], of: readonly string[]): boolean =>
  words.length > 0 && words.every((word) => of.includes(word));

// Of two letters, one slip may make any other word.
const shortest = 3;

const isNearly = (one: string, other: string): boolean =>
  one === other || (Math.min(one.length, other.length) >= shortest && isOneSlip(one, other));
