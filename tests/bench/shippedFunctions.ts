import { readFileSync } from "node:fs";
import { runInThisContext } from "node:vm";

/** Where the bundle of functions stands while benches run. */
export const functionsBundle = "dist/bench/functions.js";

export type Called = (...given: readonly unknown[]) => unknown;

/** The functions as the add-in's bundle gives them to Excel, once it knows what this Excel can do. */
export async function shippedFunctions(): Promise<ReadonlyMap<string, Called>> {
  const functions = new Map<string, Called>();
  class Refused extends Error {
    constructor(code: string, message?: string) {
      super(message ?? code);
    }
  }
  Object.assign(globalThis, {
    CustomFunctions: {
      associate: (name: string, work: Called) => functions.set(name, work),
      Error: Refused,
      ErrorCode: { invalidValue: "#VALUE!", notAvailable: "#N/A" },
    },
  });
  runInThisContext(readFileSync(functionsBundle, "utf8"));
  // Calls that come before the host is known wait for it, and their time would be that of waiting.
  await functions.get("FLOCKPREV")?.(4, 20, {});
  return functions;
}

/**
 * A call as Excel makes it, with an object of its own behind the last argument. A function that refuses throws, so that a
 * refusal is not taken for speed.
 */
export function shippedCall(
  functions: ReadonlyMap<string, Called>,
  name: string,
  given: readonly unknown[],
): () => unknown {
  const work = functions.get(name);
  if (work === undefined) throw new Error(`the bundle has no ${name}`);
  return () => work(...given, {});
}
