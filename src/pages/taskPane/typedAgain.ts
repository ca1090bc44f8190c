import { footName, typedFootName } from "../../workbook/formula/functionName.ts";
import { isCall, joinTokens, tokenize } from "../../workbook/formula/tokenize.ts";

/**
 * A formula with its FOOT functions spelt as a person types them; undefined where it calls none.
 *
 * @param formula - as the cell hands it over, with `=`
 * @example
 * typedAgain("=_xldudf_FOOT_ABOUT()") // → "=FOOT.ABOUT()"
 */
export function typedAgain(formula: unknown): string | undefined {
  if (typeof formula !== "string" || !formula.startsWith("=")) return undefined;
  const tokens = tokenize(formula.slice(1));
  if (!tokens) return undefined;
  const names = tokens.map(({ text }, at) => (isCall(tokens, at) ? footName(text) : undefined));
  if (names.every((name) => name === undefined)) return undefined;
  return `=${joinTokens(tokens.map((token, at) => (names[at] === undefined ? token : { ...token, text: typedFootName(names[at]) })))}`;
}
