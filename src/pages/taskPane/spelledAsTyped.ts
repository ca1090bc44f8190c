import { typedFootName } from "../../workbook/formula/functionName.ts";
import { joinTokens, type Token } from "../../workbook/formula/tokenize.ts";
import type { FootCall } from "./footCalls.ts";

/**
 * The pieces of a formula put together, with its FOOT functions spelt as a person types them.
 *
 * @param calls - those among the pieces, in their order
 * @returns with `=`
 */
export function spelledAsTyped(tokens: readonly Token[], calls: readonly FootCall[]): string {
  let [again, done] = ["=", 0];
  for (const { name, at, from } of calls) {
    again += joinTokens(tokens.slice(done, from)) + typedFootName(name);
    done = at + 1;
  }
  return again + joinTokens(tokens.slice(done));
}
