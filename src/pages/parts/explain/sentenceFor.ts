import type { ErrorCode } from "../../../cells/cell.ts";
import type { Argument } from "../../../reading/readArguments.ts";
import { footName } from "../../../workbook/formula/functionName.ts";
import { callsIn } from "./callsIn.ts";
import { cellsGiven, type Found } from "./cellsGiven.ts";

/** Works one function out anew, only to hear why it refuses. */
type Refuses = (
  name: string,
  given: readonly Argument[],
) => { readonly code: string; readonly message: string } | undefined;

interface Days {
  /** Of the person, as TODAY() gives it. */
  readonly today: number;
  /** 1462 in a workbook that counts days from 1904. */
  readonly dayOffset: number;
}

// Inside these an error does not come through to the cell.
const catchesErrors = /^(?:_xlfn\.)?(?:IFERROR|IFNA|ISERROR|ISERR|ISNA|ERROR\.TYPE)$/i;

/**
 * The sentence behind a cell's error, where the spreadsheet does not tell it: that of the innermost FOOT function that
 * refuses with the same error. A function that waits for the answer of another is not guessed at.
 *
 * @param error - what the cell shows; undefined where it shows none, for what a function said inside another that keeps
 *   errors from the cell
 * @param found - whole ranges: a sentence about a part of them could name the wrong row
 * @example
 * sentenceFor("=FOOT.FLOCKPREV(21,20)", "#VALUE!", new Map(), refuses, days)
 * // → "lame: 21 is more than the 20 seen; enter the lame sheep among those seen"
 */
export function sentenceFor(
  formula: string,
  error: ErrorCode | undefined,
  found: Found,
  refuses: Refuses,
  { today, dayOffset }: Days,
): string | undefined {
  for (const { name, given, inside } of [...(callsIn(formula) ?? [])].reverse()) {
    const foot = footName(name);
    if (foot === undefined || inside.some((around) => catchesErrors.test(around)) === (error !== undefined)) continue;
    const known = given.map((typed) =>
      /^TODAY\(\s*\)$/i.test(typed) ? { known: today - dayOffset } : cellsGiven(typed, found, dayOffset),
    );
    if (!known.every((argument) => argument !== undefined)) continue;
    const refused = refuses(
      foot,
      known.map((argument) => argument.known),
    );
    if (refused && (error === undefined || refused.code === error)) return refused.message;
  }
  return undefined;
}
