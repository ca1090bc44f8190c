import type { AnyFunction } from "./defineFunction.ts";

/** The namespace under which a spreadsheet offers the functions. */
export const namespace = "FOOT";

/**
 * How a function is typed, optional arguments in brackets.
 *
 * @example
 * signature(recheckDueFunction) // → "FOOT.RECHECKDUE(treated, [after_days])"
 */
export function signature(definition: AnyFunction): string {
  const names = Object.entries(definition.parameters as AnyFunction["parameters"]).map(([name, parameter]) =>
    (parameter as { optional: boolean }).optional ? `[${name}]` : name,
  );
  return `${namespace}.${definition.name}(${names.join(", ")})`;
}
