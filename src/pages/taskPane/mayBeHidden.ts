import { withoutPrefixes } from "../../workbook/formula/functionName.ts";
import { isCall, type Token } from "../../workbook/formula/tokenize.ts";

/** They take an error and show something else. */
const catchers: ReadonlySet<string> = new Set(
  `AGGREGATE COUNT COUNTA COUNTBLANK ERROR.TYPE IFERROR ISBLANK ISERR ISERROR ISLOGICAL ISNA ISNONTEXT ISNUMBER ISREF
   ISTEXT TYPE`.split(/\s+/),
);

/** They look at their first argument and may leave the others alone. IFNA is among them: it catches #N/A and no other error. */
const choosers: ReadonlySet<string> = new Set(["CHOOSE", "IF", "IFNA", "IFS", "SWITCH", "XLOOKUP"]);

/** They give a name to what is reckoned, so that it may be caught elsewhere. */
const namers: ReadonlySet<string> = new Set(["LAMBDA", "LET"]);

interface Around {
  /** The function around; undefined for a bracket that only holds together. */
  readonly name: string | undefined;
  argument: number;
}

/**
 * Whether an error of the function called at this place may show as something else, such as an empty cell or 0.
 *
 * @param at - the place of the function's name among the pieces of its formula
 * @example
 * // IFERROR(FOOT.ABOUT(),"") → true; FOOT.ABOUT()&IFERROR(A1,"") → false
 */
export function mayBeHidden(tokens: readonly Token[], at: number): boolean {
  const around = bracketsAround(tokens, at);
  const held = around.some(({ name = "", argument }) => catchers.has(name) || (choosers.has(name) && argument > 0));
  return held || (around.some(({ name = "" }) => namers.has(name)) && tokens.some((_, place) => hides(tokens, place)));
}

const hides = (tokens: readonly Token[], at: number): boolean => {
  const name = calledAt(tokens, at) ?? "";
  return catchers.has(name) || choosers.has(name);
};

const calledAt = (tokens: readonly Token[], at: number): string | undefined =>
  isCall(tokens, at) ? withoutPrefixes(tokens[at]?.text ?? "").toUpperCase() : undefined;

function bracketsAround(tokens: readonly Token[], at: number): readonly Around[] {
  const around: Around[] = [];
  for (const [place, { kind }] of tokens.slice(0, at).entries()) {
    const innermost = around.at(-1);
    if (kind === "open") around.push({ name: calledAt(tokens, place - 1), argument: 0 });
    else if (kind === "close") around.pop();
    else if (kind === "separator" && innermost) innermost.argument += 1;
  }
  return around;
}
