import { Problem } from "../../cells/problem.ts";
import { countryNumber } from "./countries.ts";
import { plainCapitals } from "./plainCapitals.ts";
import { digitsApart, type Tag, tagKey } from "./tagKey.ts";

/** How a tag can be met again after a slip. */
export interface Likeness {
  /** The tag in one form for letters that look like digits, zeros at the front, and a flock mark without its country. */
  readonly form: string;
  /** The forms it has once a part of it is left out. */
  readonly less: readonly string[];
}

/**
 * What a tag may have been before a slip, and what a slip may have made of it.
 *
 * The slips are: zeros lost at the front, a letter that looks like a digit (O, I, L, Z, S, G, B), the country left out,
 * the animal's own number alone instead of the full tag, words behind the tag ("042 ewe") or a word for a sheep before it
 * ("ewe 042"), a second number beside it ("062, now 071"; a tag struck through with the new one behind is one text to a
 * sheet), and separators between digits left out. Two tags are alike when both have the same form, or the form of one is among the lesser forms of the other;
 * that both have a lesser form in common says nothing, as with 1-12 and 11-2.
 *
 * @see common practice, no source
 * @example
 * likeness(tag("ZZ 0 123456 00042")) // → { form: "999012345600042", less: ["12345600042", "42"] }
 * likeness(tag("O42 ewe")) // → { form: "42EWE", less: ["42"] }
 * likeness(tag("1-12")) // → { form: "1-12", less: ["112"] }
 * likeness(tag("62, now 71")) // → { form: "62N0W71", less: ["62", "71"] }
 */
export function likeness({ key, shown }: Tag): Likeness {
  // Most tags are of digits only once they are read, and nothing in them looks like something else.
  if (!digitsOnly.test(key)) return ofTyped(plainCapitals(shown).trim());
  if (key.length === 15) return { form: key, less: lesserFull(key, shown) };
  const form = withoutZeros(key);
  return { form, less: fullLength.test(form) ? [ownNumber(key)] : [] };
}

const digitsOnly = /^\d+$/;

function ofTyped(typed: string): Likeness {
  const compact = digitsApart(typed);
  // A word of such letters alone, as in "Blue I", may be a number too; in a tag without any digit no other letter is.
  if (!/\d/.test(typed) && !numberInLetters.test(typed)) return { form: keyOf(compact), less: [] };
  const key = keyOf(withDigits(compact));
  const form = formOf(key);
  const less = new Set(lesserForms(key, typed, compact));
  for (const tag of [withoutWords(typed), ...tagsWithin(typed)]) {
    if (tag === typed) continue;
    const within = ofTyped(tag);
    less.add(within.form);
    for (const lesser of within.less) less.add(lesser);
  }
  less.delete(form);
  return { form, less: [...less] };
}

/** Of a full tag: without its country, and the animal's own number alone. */
function lesserFull(key: string, typed: string): string[] {
  const less = [withoutZeros(key.slice(3)), ownNumber(key)];
  // Elsewhere than with flock marks the number may be the last group as it is printed.
  const printed = typed.length > 12 && typed !== key ? /\D0*(\d{1,6})$/.exec(typed)?.[1] : undefined;
  if (printed !== undefined && printed !== less[1]) less.push(printed);
  return less;
}

function* lesserForms(key: string, typed: string, compact: string): Generator<string> {
  if (/^\d{15}$/.test(key)) {
    yield* lesserFull(key, typed);
    return;
  }
  const national = nationalNumber(key);
  if (national !== undefined) yield ownNumber(national);
  else if (/^\d+$/.test(key) && fullLength.test(withoutZeros(key))) yield ownNumber(key);
  if (key.includes("-")) yield zerosOut(key.replaceAll("-", ""));
  // Zeros at the front of a number behind letters, before those letters are taken for digits: "BILL 042" and "BILL 42".
  if (/\d/.test(compact) && /\p{L}/u.test(compact))
    yield formOf(keyOf(withDigits(zerosOut(compact.replaceAll("O", "0")))));
  if (/^[A-Z]{2}[^A-Z]/.test(compact) && countryNumber(compact.slice(0, 2)) !== undefined)
    yield formOf(keyOf(withDigits(compact.slice(2))));
}

// A flock mark and a number, with or without the zero before the mark and those before the number.
const fullLength = /^\d{8,12}$/;

const formOf = (key: string): string => zerosOut(nationalNumber(key) ?? key);

/** "123456-42" and "0-123456-00042" in the digits that an electronic number has after its country. */
function nationalNumber(key: string): string | undefined {
  const parts = /^(?:0-?)?(\d{6})-(\d{1,5})$/.exec(key);
  return parts === null ? undefined : `${parts[1]}${parts[2]?.padStart(5, "0")}`;
}

// Five digits are the animal's own in a full tag (common practice, no source).
const ownNumber = (digits: string): string => withoutZeros(digits.slice(-5));

const withoutZeros = (digits: string): string => digits.replace(/^0+(?=\d)/, "");

/** Without the zeros before each run of digits. */
const zerosOut = (key: string): string => key.replace(/(?<!\d)0+(?=\d)/g, "");

/** @returns the key, or for a tag that has none its letters and digits */
function keyOf(typed: string): string {
  try {
    return tagKey(typed);
  } catch (error) {
    if (error instanceof Problem) return typed.replace(/[^\p{L}\p{N}]/gu, "");
    throw error;
  }
}

const digitFor: Readonly<Record<string, string>> = { O: "0", I: "1", L: "1", Z: "2", S: "5", G: "6", B: "8" };
const numberInLetters = /(?<![\p{L}\p{N}])[OILZSGB]+(?![\p{L}\p{N}])/u;
const looksLikeDigit = /[OILZSGB]/g;

/** Letters that look like digits as digits, but for the country's letters before a full tag. */
function withDigits(typed: string): string {
  const inDigits = (text: string): string => text.replace(looksLikeDigit, (letter) => digitFor[letter] ?? letter);
  const rest = typed.slice(2);
  const isFull = countryNumber(typed.slice(0, 2)) !== undefined && /^(?:[^\p{L}\p{N}]*[\dOILZSGB]){7}/u.test(rest);
  return isFull ? typed.slice(0, 2) + inDigits(rest) : inDigits(typed);
}

/** Without what is written behind the last digit; a letter that follows it at once may itself be a digit. */
function withoutWords(typed: string): string {
  const behind = /\d([^\p{N}]*\p{L}[^\p{N}]*)$/u.exec(typed)?.[1];
  if (behind === undefined || /^[OILZSGB]+$/.test(behind)) return typed;
  return typed.slice(0, -behind.length);
}

// Common practice, no source.
const wordForSheep =
  /^(?:(?:EWE|LAMB|RAM|TUP|HOGG?|HOGGET|GIMMER|TEG|THEAVE|SHEARLING|W[EA]THER|SHEEP|ANIMAL|EAR|TAG|ID|EID|NO|NR|NUMBER)S?(?!\p{L})[^\p{L}\p{N}]*)+(?=[\p{L}\p{N}])/u;
const oldAndNew =
  /\b(?:NOW|WAS|NEW|OLD|EX|LOST|FORMERLY|PREVIOUSLY|REPLAC[A-Z]+|RETAG[A-Z]*|BECAME|INSTEAD|THEN)\b|[^\p{L}\p{N}\s./–-]+|->/u;
const manySlashes = /\d\s*\/\s*\d+\s*\/\s*\d/;
const fullTag = /\d{15}|[A-Z]{2} ?0? ?\d{6} ?\d{1,5}(?!\d)/g;
const ownDigits = 7;

/** The tags that stand within a text: behind a word for a sheep, or beside another. */
function tagsWithin(typed: string): readonly string[] {
  const behind = typed.replace(wordForSheep, "");
  const within = behind === typed ? [] : [behind];
  // As a number is written that passed through another program.
  const whole = /^(\d+)\.0+$/.exec(typed)?.[1];
  if (whole !== undefined) within.push(whole);
  if (!twoNumbers.test(typed)) return within;
  const apart = typed
    .split(oldAndNew)
    .map((part) => part.trim())
    .filter((part) => /\d/.test(part));
  if (apart.length > 1) within.push(...apart);
  // Of so many digits one part is a flock mark, and the numbers of a full tag are no tags.
  if ((typed.match(/\d/g) ?? []).length > ownDigits) return [...within, ...(typed.match(fullTag) ?? [])];
  // Of numbers with one slash between them the first is often a pen or a mother; of three none is.
  const numbers = typed.split(manySlashes.test(typed) ? /[\s/]+/ : /\s+/).filter((part) => /\d/.test(part));
  return numbers.length > 1 ? [...within, ...numbers] : within;
}

const twoNumbers = /\d\D+\d/;

/**
 * Whether two tags may be one animal after a slip.
 *
 * @example
 * isAlike(tag("042"), tag("O42")) // → true
 * isAlike(tag("1-12"), tag("11-2")) // → false
 */
export function isAlike(one: Tag, other: Tag): boolean {
  if (one.key === other.key || !endsAlike(one.key, other.key)) return false;
  const [a, b] = [likeness(one), likeness(other)];
  return a.form === b.form || a.less.includes(b.form) || b.less.includes(a.form);
}

/**
 * Two keys that end in digits cannot be alike unless these agree: no slip touches the end of a number, but a tag may have
 * another behind it.
 *
 * @example
 * endsAlike("042", "43") // → false
 */
export function endsAlike(one: string, other: string): boolean {
  const [a, b] = [one.charCodeAt(one.length - 1), other.charCodeAt(other.length - 1)];
  return a === b || a > nine || b > nine || twoNumbers.test(one) || twoNumbers.test(other);
}

const nine = "9".charCodeAt(0);
