import type { Cell } from "../../cells/cell.ts";
import { isCellError, showCell } from "../../cells/cell.ts";
import type { Fault } from "../../cells/fault.ts";
import { Problem } from "../../cells/problem.ts";
import { cellError } from "./faults.ts";
import { PrintedTag } from "./printedTag.ts";
import type { Tag } from "./tagKey.ts";
import { tagReader } from "./tagReader.ts";

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
 * // → { what: "14 digits: an electronic number has 15", mend: "look whether zeros at the front or … are lost, and …" }
 */
export function tagFault(tag: Cell): Fault | undefined {
  const read = readTag(tag, tagReader());
  return "what" in read ? read : undefined;
}

/**
 * A tag, or what is wrong with it.
 *
 * @param read - a `tagReader`, which is given each spelling once
 */
export function readTag(cell: Cell, read: (written: string | number) => Tag): Tag | Fault {
  if (isCellError(cell)) return cellError(cell.error);
  if (typeof cell === "boolean") return notATag(cell);
  if (cell === null) return { what: "no tag", mend: "enter it" };
  try {
    const tag = read(cell);
    return (mayBeFaulty(tag) ? keyFault(tag.key, cell) : undefined) ?? tag;
  } catch (error) {
    if (error instanceof Problem) return error.fault;
    throw error;
  }
}

/** A cell that can be nobody's tag: TRUE, say. */
export const notATag = (cell: Cell): Fault => ({
  what: `${showCell(cell)} is not a tag`,
  mend: "enter the tag as text",
});

// A tag printed in full has a country's letters, and a number that begins with 0: it may be 0 and cannot be too high.
const mayBeFaulty = (tag: Tag): boolean => !(tag instanceof PrintedTag) || tag.shown.endsWith(" 000000 00000");

const again = "look at the tag again";

function keyFault(key: string, tag: string | number): Fault | undefined {
  if (!/^\d+$/.test(key) || key.length < 10) return undefined;
  const { length } = key;
  if (length > 15)
    return { what: `${length} digits: an electronic number has 15, or 16 with a zero in front`, mend: again };
  if (length < 15)
    return {
      what: `${length} digits: an electronic number has 15`,
      mend: "look whether zeros at the front or digits at the end are lost, and enter it as text",
    };
  if (typeof tag === "number" && String(tag).length < 15)
    return { what: "a zero at the front is lost", mend: `enter ${key} as text` };
  return electronicFault(key);
}

function electronicFault(digits: string): Fault | undefined {
  const country = Number(digits.slice(0, 3));
  const animal = Number(digits.slice(3));
  if (animal > highestNumber)
    return {
      what: `the animal number ${digits.slice(3)} is above ${highestNumber}, the highest an electronic tag holds`,
      mend: again,
    };
  if (animal === 0) return { what: "the animal number is 0", mend: again };
  if (country < firstCountry || (country > lastCountry && country < firstMaker))
    return { what: `${digits.slice(0, 3)} is no country's code`, mend: "look at the first three digits again" };
  return undefined;
}

// ISO 3166-1 numbers run from 004 to 894 (from memory); 900 to 998 are makers' codes and 999 is for tests (ISO 11784).
const firstCountry = 4;
const lastCountry = 894;
const firstMaker = 900;
