import { distance } from "fastest-levenshtein";
import { namespace } from "../../../definition/formulaText.ts";
import { isCall, type Token, tokenize } from "../../../workbook/formula/tokenize.ts";
import { words } from "../../words.ts";

/**
 * What a formula that cannot be worked out may have been meant as: a misspelt function, one without FOOT., a semicolon in
 * place of a comma.
 *
 * @param formula - with `=`
 * @param names - of the functions, without FOOT.
 * @returns a sentence, or undefined where nothing is known
 * @example
 * formulaHint("=FOOT.FLOKPREV(2,20)", ["FLOCKPREV"]) // → "There is no FOOT.FLOKPREV. Was FOOT.FLOCKPREV meant?"
 */
export function formulaHint(formula: string, names: readonly string[]): string | undefined {
  const tokens = tokenize(formula.replace(/^=/, ""));
  if (!tokens) return undefined;
  const calls = tokens.filter((_, at) => isCall(tokens, at)).map(({ text }) => text);
  for (const call of calls) {
    const meant = meantBy(call.toUpperCase(), names);
    if (meant !== undefined) return words.explain.meant(call, `${namespace}.${meant}`);
  }
  return hasSemicolon(tokens) ? words.explain.comma : undefined;
}

// As many letters may be wrong as leave two thirds of a name right.
const farthest = (name: string): number => Math.floor(name.length / 3);

function meantBy(call: string, names: readonly string[]): string | undefined {
  const bare = call.replace(new RegExp(`^${namespace}[._]?`), "");
  if (names.includes(bare)) return call === `${namespace}.${bare}` ? undefined : bare;
  // Of a name without FOOT. nothing is known, unless it is one of ours: the spreadsheet has functions of its own.
  if (bare === call) return undefined;
  const [nearest] = names
    .map((name) => ({ name, away: distance(bare, name) }))
    .sort((one, other) => one.away - other.away);
  return nearest && nearest.away <= farthest(bare) ? nearest.name : undefined;
}

/** Outside braces, where it stands between rows of constants. */
function hasSemicolon(tokens: readonly Token[]): boolean {
  let braces = 0;
  for (const { text } of tokens) {
    if (text === "{") braces += 1;
    if (text === "}") braces -= 1;
    if (text === ";" && braces === 0) return true;
  }
  return false;
}
