import { editCalls, withoutProperties } from "./editCalls.ts";

const computation: ReadonlySet<string> = new Set(["compute", "rowFault"]);

/**
 * A webpack loader that leaves the computation out of a definition, already turned into JavaScript: a page that only
 * describes the functions need not carry the statistics behind them.
 *
 * @example
 * readersOnly('defineFunction({ name: "A", compute: a })') // → 'defineFunction({ name: "A", })'
 */
export default function readersOnly(source: string): string {
  return editCalls(
    source,
    () => (call) => (call.named === "defineFunction" ? withoutProperties(call, computation, source) : []),
  );
}
