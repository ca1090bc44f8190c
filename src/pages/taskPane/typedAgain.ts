import { tokenize } from "../../workbook/formula/tokenize.ts";
import { footCalls } from "./footCalls.ts";
import { spelledAsTyped } from "./spelledAsTyped.ts";

/**
 * A formula with its FOOT functions spelt as a person types them; undefined where it calls none.
 *
 * @param formula - as the cell hands it over, with `=`
 * @param theirs - names that the workbook defines itself, in small letters
 * @example
 * typedAgain("=_xldudf_FOOT_ABOUT()") // → "=FOOT.ABOUT()"
 */
export function typedAgain(formula: unknown, theirs?: ReadonlySet<string>): string | undefined {
  if (typeof formula !== "string" || !formula.startsWith("=")) return undefined;
  const tokens = tokenize(formula.slice(1)) ?? [];
  const calls = footCalls(tokens, theirs);
  return calls.length === 0 ? undefined : spelledAsTyped(tokens, calls);
}
