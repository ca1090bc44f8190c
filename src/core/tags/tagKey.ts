import { Problem } from "../../cells/problem.ts";
import { countryNumber } from "./countries.ts";

/** An animal: `key` tells animals apart, `shown` is the tag as it was first written. */
export interface Tag {
  readonly key: string;
  readonly shown: string;
}

/**
 * One spelling for an animal, however its tag was typed.
 *
 * Spaces, case and separators go. A 15-digit number (ISO 11784: 3 digits country, 12 digits animal), the same number in
 * 16 digits with a zero before the country, and the printed form with country letters are one animal and give the
 * 15 digits. Anything else (a management tag) keeps its letters and digits as they are, leading zeros too.
 *
 * @throws Problem when nothing is left, or when the spreadsheet has already lost digits: a cell keeps 15
 * @see ISO 11784 for the number; printed forms and the 6-digit flock mark: common practice, no source
 * @example
 * tagKey("ZZ 0 123456 00042") // → "999012345600042"
 * tagKey(999012345600042) // → "999012345600042"
 * tagKey(" blue-42 ") // → "BLUE42"
 */
export function tagKey(tag: string | number): string {
  const plain = typeof tag === "number" ? digitsOf(tag) : tag.toUpperCase().replace(/[^\p{L}\p{N}]/gu, "");
  if (plain === "") throw new Problem(`"${tag}" has no letter or digit; enter the tag`);
  if (typeof tag === "string" && spoiled.test(tag.trim()))
    throw new Problem(`"${tag.trim()}" has lost digits in the spreadsheet; enter the tag again as text`);
  if (/^\d+$/.test(plain)) return plain.length === 16 && plain.startsWith("0") ? plain.slice(1) : plain;
  const printed = /^([A-Z]{2})(\d+)$/.exec(plain);
  if (!printed) return plain;
  const [, letters = "", digits = ""] = printed;
  const country = countryNumber(letters);
  const national = country === undefined ? undefined : nationalNumber(digits, letters);
  return country === undefined || national === undefined ? plain : country + national;
}

// "9.99012E+14": what is left when a long number was shown in a narrow cell and copied.
const spoiled = /^\d[.,]?\d*[eE]\+\d+$/;

function digitsOf(tag: number): string {
  if (!Number.isInteger(tag) || tag < 0) throw new Problem(`${tag} is not a tag number; enter the tag as text`);
  if (tag >= 1e15)
    throw new Problem(
      `${tag} has more than 15 digits, and a cell that holds a number keeps only 15; enter the tag as text`,
    );
  return String(tag);
}

// Sheep tags of this pattern print a 6-digit flock mark and a number of up to 5 digits, without the leading zeros that
// the 12-digit national number has. Longer numbers are already whole.
function nationalNumber(digits: string, letters: string): string | undefined {
  if (digits.length === 12) return digits;
  if (!flockMarkLetters.has(letters) || digits.length < 7 || digits.length > 11) return undefined;
  return `0${digits.slice(0, 6)}${digits.slice(6).padStart(5, "0")}`;
}

const flockMarkLetters = new Set(["UK", "GB", "ZZ"]);
