import { showCell } from "../../cells/cell.ts";
import { Problem } from "../../cells/problem.ts";
import { countryNumber, isCountryNumber } from "./countries.ts";
import { noOneTag } from "./noOneTag.ts";
import { isNumberOfAnimals } from "./numberOfAnimals.ts";
import { plainCapitals } from "./plainCapitals.ts";
import { printedKey } from "./printedTag.ts";

/** An animal: `key` tells animals apart, `shown` is the tag as it was first written. */
export interface Tag {
  readonly key: string;
  readonly shown: string;
  /** Which spelling it is, from 0, of those that one `tagReader` read. */
  readonly spelling?: number;
  /** Where another spelling has the same object here, it is another animal, and no key is needed to tell. */
  readonly apart?: object | undefined;
}

/**
 * One spelling for an animal, however its tag was typed.
 *
 * Case goes, and so do spaces and separators, except between digits: "1-12" and "11-2" are two animals. A 15-digit number (ISO 11784: 3 digits country, 12 digits animal), the same number in
 * 16 digits with a zero before the country, the number without the zeros that a cell drops from its front, and the
 * printed form with country letters are one animal and give the 15 digits. Anything else (a management tag) keeps its
 * letters and digits as they are, leading zeros too, with one hyphen wherever digits were set apart.
 *
 * @throws Problem when nothing is left, when a number or a group of animals is named ("23 lambs"), several tags or none ("ditto"), or one that is not sure ("04?"), when the spreadsheet has already lost digits (a cell keeps 15), or when a printed
 *   form without spaces can be read as two animals
 * @see ISO 11784 for the number; printed forms and the 6-digit flock mark: common practice, no source
 * @example
 * tagKey("ZZ 0 123456 00042") // → "999012345600042"
 * tagKey(999012345600042) // → "999012345600042"
 * tagKey(" blue-42 ") // → "BLUE42"
 * tagKey("1/12") // → "1-12"
 */
export function tagKey(tag: string | number): string {
  const inFull = typeof tag === "string" ? keyInFull(tag) : undefined;
  if (inFull !== undefined) return inFull;
  const typed = typeof tag === "number" ? digitsOf(tag) : plainCapitals(tag).trim();
  const plain = lettersAndDigits(typed);
  if (plain === "") throw new Problem({ what: `${showCell(tag)} has no letter or digit`, mend: "enter the tag" });
  if (spoiled.test(typed))
    throw new Problem({
      what: `${showCell(tag)} has lost digits in the spreadsheet`,
      mend: "enter the tag again as text",
    });
  if (!wholeTag.test(typed)) {
    const noOne = noOneTag(typed, String(tag));
    if (noOne !== undefined) throw new Problem(noOne);
    if (threeLetters.test(plain) && isNumberOfAnimals(typed))
      throw new Problem({
        what: `${showCell(tag)} is a number of animals, not a tag`,
        mend: "enter the tag of each, or leave the tag blank and name their group in a column for groups",
      });
  }
  if (/^\d+$/.test(plain)) {
    const number = electronicNumber(plain);
    return number.length === 15 ? number : apartOf(typed, plain);
  }
  if (/^[A-Z]{2}\d+$/.test(plain)) {
    const [letters, digits] = [plain.slice(0, 2), plain.slice(2)];
    const country = countryNumber(letters);
    const national = country === undefined ? undefined : nationalNumber(typed, letters, digits, tag);
    if (country !== undefined && national !== undefined) return country + national;
  }
  return apartOf(typed, plain);
}

// Most tags are whole, and are spared the search for words.
const wholeTag = /^[A-Z]{0,2}[ \d]{0,20}\d$/;

// The two forms of most tags, each told by its length before it is looked at: a flock has thousands of them, and to take
// a match apart costs as much as to find it.
const keyInFull = (tag: string): string | undefined =>
  tag.length === 15 && electronic.test(tag) ? tag : printedKey(tag);

const electronic = /^\d{15}$/;

/** Without spaces and separators. Letter by letter, since a flock has thousands of tags and a search costs more. */
function lettersAndDigits(typed: string): string {
  let plain = "";
  let from = 0;
  for (let at = 0; at < typed.length; at++) {
    const code = typed.charCodeAt(at);
    if (code > lastAscii) return typed.replace(/[^\p{L}\p{N}]/gu, "");
    if ((code >= zero && code <= nine) || (code >= capitalA && code <= capitalZ)) continue;
    plain += typed.slice(from, at);
    from = at + 1;
  }
  return from === 0 ? typed : plain + typed.slice(from);
}

const zero = 0x30;
const nine = 0x39;
const capitalA = 0x41;
const capitalZ = 0x5a;
const lastAscii = 0x7f;

// No word for many sheep is shorter.
const threeLetters = /\p{L}{3}/u;

// Most tags have no separators, and are spared the search for them.
const apartOf = (typed: string, plain: string): string => (typed.length === plain.length ? plain : digitsApart(typed));

/**
 * A text without its spaces and separators, but with a hyphen where digits were set apart.
 *
 * @example
 * digitsApart("BLUE 1/12") // → "BLUE1-12"
 */
export const digitsApart = (text: string): string =>
  text.replace(/(\d)[^\p{L}\p{N}]+(?=\d)/gu, "$1-").replace(/[^\p{L}\p{N}-]|-(?!\d)|(?<!\d)-/gu, "");

// "9.99012E+14": what is left when a long number was shown in a narrow cell and copied.
const spoiled = /^\d[.,]?\d*E\+\d+$/;

function digitsOf(tag: number): string {
  if (!Number.isInteger(tag) || tag < 0)
    throw new Problem({ what: `${tag} is not a tag number`, mend: "enter the tag as text" });
  if (tag >= 1e15)
    throw new Problem({
      what: `${tag} has more than 15 digits, and a cell that holds a number keeps only 15`,
      mend: "enter the tag as text",
    });
  return String(tag);
}

// Country codes below 100 begin with a zero, which a cell that holds a number drops.
function electronicNumber(digits: string): string {
  if (digits.length === 16 && digits.startsWith("0")) return digits.slice(1);
  return digits.length === 14 && isCountryNumber(`0${digits.slice(0, 2)}`) ? `0${digits}` : digits;
}

// Flock-mark tags print a zero or none, a 6-digit flock mark, and a number of up to 5 digits without the
// leading zeros that the 12-digit national number has. Elsewhere the national number is 12 digits with zeros in front.
function nationalNumber(typed: string, letters: string, digits: string, tag: string | number): string | undefined {
  if (digits.length === 12) return digits;
  if (digits.length > 12) return undefined;
  if (!flockMarkLetters.has(letters)) return digits.length < 8 ? undefined : digits.padStart(12, "0");
  if (digits.length < 7) return undefined;
  const parts = typed.match(/\d+/g) ?? [];
  const inParts = fromParts(parts);
  if (inParts !== undefined) return inParts;
  // Run together, 0 123456 42 and 012345 642 are the same digits.
  if (digits.startsWith("0"))
    throw new Problem({
      what: `${showCell(tag)} can be read as two animals`,
      mend: "leave a space between flock mark and number, or enter all 12 digits",
    });
  return whole(digits.slice(0, 6), digits.slice(6));
}

function fromParts(parts: readonly string[]): string | undefined {
  const [mark = "", number = ""] = parts.length === 3 && parts[0] === "0" ? parts.slice(1) : parts;
  const sixDigits = mark.length === 7 && mark.startsWith("0") && parts.length === 2 ? mark.slice(1) : mark;
  const isShort = parts.length <= 3 && sixDigits.length === 6 && number.length >= 1 && number.length <= 5;
  return isShort && parts.length === (parts[0] === "0" ? 3 : 2) ? whole(sixDigits, number) : undefined;
}

const whole = (flockMark: string, number: string): string => `0${flockMark}${number.padStart(5, "0")}`;

const flockMarkLetters = new Set(["UK", "GB", "ZZ"]);
