import { isCall, joinTokens, type Token, tokenize } from "../../../workbook/formula/tokenize.ts";

/** One call in a formula, as it was typed. */
export interface Call {
  readonly name: string;
  /** What is given, without the spaces around it; "" where an argument was left out. */
  readonly given: readonly string[];
  /** The functions around it, the outermost first. */
  readonly inside: readonly string[];
}

/**
 * The calls in a formula, the outermost first. A semicolon parts arguments as a comma does; a bracket that is missing at the
 * end is thought there.
 *
 * @param formula - with or without `=`
 * @returns undefined where the formula cannot be read
 * @example
 * callsIn("=IF(A1, FOOT.CLEARDATE(B2, 28), 0)")?.[1] // → { name: "FOOT.CLEARDATE", given: ["B2", "28"], inside: ["IF"] }
 */
export function callsIn(formula: string): readonly Call[] | undefined {
  const tokens = tokenize(formula.replace(/^\s*=/, ""));
  if (!tokens) return undefined;
  const calls: Call[] = [];
  const around: Open[] = [];
  for (const [at, token] of tokens.entries()) {
    if (token.kind === "open") {
      const call: Open = { name: isCall(tokens, at - 1) ? tokens[at - 1]?.text : undefined, given: [], from: at + 1 };
      if (call.name !== undefined) calls.push({ name: call.name, given: call.given, inside: namesOf(around) });
      around.push(call);
      continue;
    }
    const open = around.at(-1);
    if (open === undefined) continue;
    if (token.kind === "close") {
      end(open, tokens, at);
      around.pop();
    } else if (token.kind === "separator") {
      open.given.push(text(tokens.slice(open.from, at)));
      open.from = at + 1;
    }
  }
  for (const open of around) end(open, tokens, tokens.length);
  return calls;
}

interface Open {
  /** Undefined for brackets that call nothing. */
  readonly name: string | undefined;
  readonly given: string[];
  from: number;
}

const namesOf = (around: readonly Open[]): readonly string[] => around.flatMap(({ name }) => name ?? []);

const text = (tokens: readonly Token[]): string => joinTokens(tokens).trim();

function end({ given, from }: Open, tokens: readonly Token[], at: number): void {
  const last = text(tokens.slice(from, at));
  // Brackets with nothing in them give nothing; after a comma the nothing is an argument that was left out.
  if (last !== "" || given.length > 0) given.push(last);
}
