import type { Registration } from "./bridge.ts";
import type { UniverParts } from "./univerParts.ts";

/**
 * The engine's own class for one of its functions, to be built upon.
 *
 * @throws Error when the engine has none of that name
 */
export function engineFunction({ formula }: UniverParts, name: string): Registration[0] {
  const known = formula.ALL_IMPLEMENTED_FUNCTIONS as unknown as readonly Registration[];
  const found = known.find(([, other]) => String(other) === name);
  if (!found) throw new Error(`the engine has no ${name}`);
  return found[0];
}
