import { isCall, joinTokens, type Token, tokenize } from "../../../workbook/formula/tokenize.ts";

/** One call in a formula, as it was typed. */
export interface Call {
  readonly name: string;
  /** What is given, without the spaces around it; "" where an argument was left out. */
  readonly given: readonly string[];
  /** The functions around it, the outermost first. */
  readonly inside: readonly string[];
  /** The call next around it, by its place among the calls, and in which of its arguments it stands; undefined for none. */
  readonly within: { readonly call: number; readonly argument: number } | undefined;
  /** It is all that there is in the argument, or in the formula. */
  readonly alone: boolean;
}

/**
 * The calls in a formula, the outermost first. A semicolon parts arguments as a comma does; a bracket that is missing at the
 * end is thought there.
 *
 * @param formula - with or without `=`
 * @returns undefined where the formula cannot be read
 * @example
 * callsIn("=IF(A1, FOOT.CLEARDATE(B2, 28), 0)")?.[1]
 * // → { name: "FOOT.CLEARDATE", given: ["B2", "28"], inside: ["IF"], within: { call: 0, argument: 1 }, alone: true }
 */
export function callsIn(formula: string): readonly Call[] | undefined {
  const tokens = tokenize(formula.replace(/^\s*=/, ""));
  if (!tokens) return undefined;
  const calls: Making[] = [];
  const around: Open[] = [];
  for (const [at, token] of tokens.entries()) {
    if (token.kind === "open") {
      const name = isCall(tokens, at - 1) ? tokens[at - 1]?.text : undefined;
      const call: Open = { name, place: name === undefined ? undefined : calls.length, given: [], from: at + 1 };
      const next = around.findLast(({ place }) => place !== undefined);
      const within = next?.place === undefined ? undefined : { call: next.place, argument: next.given.length };
      // Another bracket between the two makes a sum of it.
      const isFirst = isNothing(tokens.slice(around.at(-1)?.from ?? 0, at - 1)) && around.at(-1) === next;
      if (name !== undefined) calls.push({ name, given: call.given, inside: namesOf(around), within, alone: isFirst });
      around.push(call);
      continue;
    }
    const open = around.at(-1);
    if (open === undefined) continue;
    if (token.kind === "close") {
      end(open, tokens, at);
      around.pop();
      const call = open.place === undefined ? undefined : calls[open.place];
      if (call && !isNothing(untilNext(tokens, at + 1))) call.alone = false;
    } else if (token.kind === "separator") {
      open.given.push(text(tokens.slice(open.from, at)));
      open.from = at + 1;
    }
  }
  for (const open of around) end(open, tokens, tokens.length);
  return calls;
}

type Making = { -readonly [Key in keyof Call]: Call[Key] };

interface Open {
  /** Among the calls. */
  readonly place: number | undefined;
  /** Undefined for brackets that call nothing. */
  readonly name: string | undefined;
  readonly given: string[];
  from: number;
}

const namesOf = (around: readonly Open[]): readonly string[] => around.flatMap(({ name }) => name ?? []);

const isNothing = (tokens: readonly Token[]): boolean => tokens.every(({ kind }) => kind === "space");

/** What follows until the argument ends. */
function untilNext(tokens: readonly Token[], from: number): readonly Token[] {
  const end = tokens.findIndex(({ kind }, at) => at >= from && (kind === "separator" || kind === "close"));
  return tokens.slice(from, end < 0 ? tokens.length : end);
}

const text = (tokens: readonly Token[]): string => joinTokens(tokens).trim();

function end({ given, from }: Open, tokens: readonly Token[], at: number): void {
  const last = text(tokens.slice(from, at));
  // Brackets with nothing in them give nothing; after a comma the nothing is an argument that was left out.
  if (last !== "" || given.length > 0) given.push(last);
}
