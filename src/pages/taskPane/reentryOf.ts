import { catalogue } from "../../../functions/catalogue.ts";
import { typedFootName } from "../../workbook/formula/functionName.ts";
import { isCall, type Token, tokenize } from "../../workbook/formula/tokenize.ts";
import { type FootCall, footCalls } from "./footCalls.ts";
import { keptAsText } from "./keptAsText.ts";
import { mayBeHidden } from "./mayBeHidden.ts";
import { spelledAsTyped } from "./spelledAsTyped.ts";

/** A formula that is to be entered again. */
export interface Reentry {
  readonly formula: string;
  /** Excel may have known it: it only cannot be seen, since the formula hides errors. It is entered as it stands. */
  readonly asPrecaution: boolean;
  /** The cell holds no formula of its own but what another program left of one. */
  readonly left?: Left;
}

/** What Google Sheets left of a formula: one that Excel can take, or one with functions that Excel does not have. */
export type Left = "usable" | "foreign";

const offered: ReadonlySet<string> = new Set(catalogue.map(({ name }) => name));

/**
 * What to enter into a cell whose formula Excel does not know, or may not know without showing it. Excel keeps a
 * function that was not there when the workbook was opened as unknown, also after it has come, and in a formula that
 * was typed nothing but the answer tells.
 *
 * @param formula - as the cell hands it over, with `=`
 * @param shown - the value of the cell
 * @param theirs - names that the workbook defines itself, in small letters
 * @returns undefined where nothing is to be entered
 */
export function reentryOf(formula: unknown, shown: unknown, theirs: ReadonlySet<string>): Reentry | undefined {
  const kept = keptAsText(formula);
  if (kept !== undefined) return ofKept(kept);
  if (typeof formula !== "string" || !formula.startsWith("=")) return undefined;
  const tokens = tokenize(formula.slice(1)) ?? [];
  const all = footCalls(tokens, theirs);
  if (all.length === 0) return undefined;
  const calls = all.filter(({ name }) => offered.has(name));
  const isMisspelt = ({ name, at, from }: FootCall): boolean =>
    from < at || tokens[at]?.text.toUpperCase() !== typedFootName(name);
  if (shown === "#NAME?" || calls.some(isMisspelt))
    return { formula: spelledAsTyped(tokens, all), asPrecaution: false };
  return calls.some(({ at }) => mayBeHidden(tokens, at)) ? { formula, asPrecaution: true } : undefined;
}

// Functions of Google Sheets that Excel does not have (from memory), of those that may stand around ours.
const foreign: ReadonlySet<string> = new Set(
  `ARRAYFORMULA ARRAY_CONSTRAIN FLATTEN GOOGLEFINANCE IMPORTDATA IMPORTRANGE JOIN QUERY REGEXMATCH SORTN SPLIT TO_DATE
   TO_PERCENT TO_TEXT`.split(/\s+/),
);

function ofKept(kept: string): Reentry | undefined {
  const tokens = tokenize(kept.slice(1)) ?? [];
  const calls = footCalls(tokens);
  if (!calls.some(({ name }) => offered.has(name))) return undefined;
  return {
    formula: spelledAsTyped(tokens, calls),
    asPrecaution: false,
    left: tokens.some(isForeign) ? "foreign" : "usable",
  };
}

const isForeign = ({ text }: Token, at: number, tokens: readonly Token[]): boolean =>
  isCall(tokens, at) && foreign.has(text.toUpperCase());
