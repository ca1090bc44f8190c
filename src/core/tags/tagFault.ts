import type { Cell } from "../../cells/cell.ts";
import { isCellError } from "../../cells/cell.ts";
import { Problem } from "../../cells/problem.ts";
import { tagKey } from "./tagKey.ts";

/** The highest animal number that fits the 38 bits of an electronic tag (ISO 11784): 2^38 − 1. */
const highestNumber = 274_877_906_943;

/**
 * What is wrong with a tag, in words; undefined when nothing is.
 *
 * Only what the tag itself shows: a lost digit, an electronic number that cannot be, a code that no country has.
 * That an animal wears it is not known.
 *
 * @see ISO 11784: 10-bit country or maker code, 38-bit animal number, printed as 15 digits
 * @example
 * tagFault("ZZ 0 123456 00042") // → undefined
 * tagFault("99901234560004")
 * // → "14 digits: an electronic number has 15; look whether zeros at the front or digits at the end are lost, and enter it as text"
 */
export function tagFault(tag: Cell): string | undefined {
  if (isCellError(tag)) return `the cell holds ${tag.error}; mend that cell first`;
  if (typeof tag === "boolean") return `${tag ? "TRUE" : "FALSE"} is not a tag; enter the tag as text`;
  if (tag === null) return "no tag; enter it";
  try {
    return keyFault(tagKey(tag), tag);
  } catch (error) {
    if (error instanceof Problem) return error.sentence;
    throw error;
  }
}

function keyFault(key: string, tag: string | number): string | undefined {
  if (!/^\d+$/.test(key) || key.length < 10) return undefined;
  const { length } = key;
  if (length > 15)
    return `${length} digits: an electronic number has 15, or 16 with a zero in front; look at the tag again`;
  if (length < 15)
    return `${length} digits: an electronic number has 15; look whether zeros at the front or digits at the end are lost, and enter it as text`;
  if (typeof tag === "number" && String(tag).length < 15) return `a zero at the front is lost; enter ${key} as text`;
  return electronicFault(key);
}

function electronicFault(digits: string): string | undefined {
  const country = Number(digits.slice(0, 3));
  const animal = Number(digits.slice(3));
  if (animal > highestNumber)
    return `the animal number ${digits.slice(3)} is above ${highestNumber}, the highest an electronic tag holds; look at the tag again`;
  if (animal === 0) return "the animal number is 0; look at the tag again";
  if (country < firstCountry || (country > lastCountry && country < firstMaker))
    return `${digits.slice(0, 3)} is no country's code; look at the first three digits again`;
  return undefined;
}

// ISO 3166-1 numbers run from 004 to 894 (from memory); 900 to 998 are makers' codes and 999 is for tests (ISO 11784).
const firstCountry = 4;
const lastCountry = 894;
const firstMaker = 900;
