import { footName } from "../../workbook/formula/functionName.ts";
import { isCall, type Token } from "../../workbook/formula/tokenize.ts";

/** A call of a FOOT function among the pieces of a formula. */
export interface FootCall {
  /** The function, without its namespace and in capitals. */
  readonly name: string;
  /** The place of its name among the pieces. */
  readonly at: number;
  /** The place of the first piece that belongs to the name: before `at` where a file is named in front of it. */
  readonly from: number;
}

const asStored = /^(?:_xl\w+\.)*_xldudf_/i;

/**
 * The calls of FOOT functions in a formula, however they are spelt.
 *
 * @param theirs - names that the workbook defines itself, in small letters: a `foot_total` among them is no function of ours
 */
export const footCalls = (tokens: readonly Token[], theirs: ReadonlySet<string> = new Set()): readonly FootCall[] =>
  tokens.flatMap(({ text }, at) => {
    const name = isCall(tokens, at) && !theirs.has(text.toLowerCase()) ? footName(text) : undefined;
    return name === undefined ? [] : [{ name, at, from: asStored.test(text) ? startOfFile(tokens, at) : at }];
  });

/**
 * Excel takes a function that it does not know for one of another add-in's file now and then, and names that file in
 * front of it: `Other.xla!_xldudf_FOOT_ABOUT()`, `[2]!_xldudf_FOOT_ABOUT()`.
 */
function startOfFile(tokens: readonly Token[], at: number): number {
  const kind = (before: number) => tokens[at - before]?.kind;
  if (tokens[at - 1]?.text !== "!") return at;
  if (kind(2) === "name") return kind(3) === "bracket" ? at - 3 : at - 2;
  return kind(2) === "quoted" || kind(2) === "bracket" ? at - 2 : at;
}
