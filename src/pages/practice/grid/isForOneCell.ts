import { readPlace } from "../../../workbook/address.ts";
import { footName, withoutPrefixes } from "../../../workbook/formula/functionName.ts";
import { isCall, type Token, tokenize } from "../../../workbook/formula/tokenize.ts";

const takeRanges: ReadonlySet<string> = new Set(
  "AVERAGE AVERAGEA COUNT COUNTA COUNTBLANK MAX MEDIAN MIN PRODUCT STDEV SUM SUMSQ VAR".split(" "),
);
const takeCells: ReadonlySet<string> = new Set(
  `ABS AND CEILING CONCATENATE DATE DAY EDATE EOMONTH EXACT FLOOR IF IFERROR IFNA INT ISBLANK ISERROR ISNA ISNUMBER
   ISTEXT LEFT LEN LOWER MID MOD MONTH NOT NOW OR PROPER RIGHT ROUND ROUNDDOWN ROUNDUP SQRT SUBSTITUTE TEXT
   TODAY TRIM UPPER VALUE WEEKDAY YEAR`.split(/\s+/),
);

interface Argument {
  readonly taker: string;
  ranges: boolean;
  operators: boolean;
}

/**
 * Whether a formula works on single cells only, or hands ranges as they are to functions that make one value of them.
 * A formula of any other kind must be stored as an array formula: of a plain one Excel works out one cell only.
 *
 * @param formula - without `=`
 * @example
 * isForOneCell("SUM(A1:A3)") // → true
 * isForOneCell("SUM(A1:A3*B1:B3)") // → false
 */
export function isForOneCell(formula: string): boolean {
  const tokens = tokenize(formula);
  if (!tokens) return true;
  const around: Argument[] = [{ taker: "", ranges: false, operators: false }];
  let taker = "";
  for (const [at, token] of tokens.entries()) {
    const argument = around.at(-1) as Argument;
    if (isCall(tokens, at)) {
      taker = footName(token.text) === undefined ? withoutPrefixes(token.text).toUpperCase() : "";
      if (!takeRanges.has(taker) && !takeCells.has(taker)) return false;
    } else if (token.kind === "open") {
      if (token.text === "{") return false;
      around.push({ taker, ranges: false, operators: false });
      taker = "";
    } else if (token.kind === "separator")
      around.push({ ...(around.pop() as Argument), ranges: false, operators: false });
    else if (token.kind === "close") around.pop();
    else if (token.text === "#" || token.text === "@") return false;
    else if (isManyCells(tokens, at)) argument.ranges = true;
    else if (token.kind === "operator" && token.text !== "!") argument.operators = true;
    if (argument.ranges && (argument.operators || !takeRanges.has(argument.taker))) return false;
  }
  return true;
}

const isManyCells = (tokens: readonly Token[], at: number): boolean => {
  const { kind, text } = tokens[at] as Token;
  if (text === ":" || kind === "bracket") return true;
  // What is no cell is the name of a range or of a table, or of something unknown.
  return kind === "name" && tokens[at + 1]?.text !== "!" && !readPlace(text) && !/^(?:TRUE|FALSE)$/i.test(text);
};
