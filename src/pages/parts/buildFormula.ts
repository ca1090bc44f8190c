import { Problem } from "../../cells/problem.ts";
import type { AnyFunction } from "../../definition/defineFunction.ts";
import { namespace } from "../../definition/formulaText.ts";
import type { Parameter } from "../../reading/parameter.ts";
import { argumentText } from "./argumentText.ts";

export interface BuiltFormula {
  /** The formula; undefined while an argument is at fault. */
  readonly formula: string | undefined;
  /** What is wrong, by argument. */
  readonly faults: ReadonlyMap<string, string>;
}

/**
 * The formula that a filled form stands for.
 *
 * @param typed - what was typed, by argument
 * @param cell - where the formula will stand; cells of its own sheet are written without the sheet's name
 * @example
 * buildFormula(flockPrevalenceFunction, { lame: "B2:B9", seen: "C2:C9" }).formula // → "=FOOT.FLOCKPREV(B2:B9,C2:C9)"
 */
export function buildFormula(
  definition: AnyFunction,
  typed: Readonly<Record<string, string>>,
  cell = "",
): BuiltFormula {
  const ownSheet = cell.slice(0, cell.lastIndexOf("!") + 1);
  const faults = new Map<string, string>();
  const pieces = Object.entries(definition.parameters as Record<string, Parameter<unknown>>).map(
    ([name, parameter]) => {
      try {
        const piece = argumentText(parameter, typed[name] ?? "");
        return ownSheet !== "" && piece.startsWith(ownSheet) ? piece.slice(ownSheet.length) : piece;
      } catch (error) {
        if (!(error instanceof Problem)) throw error;
        faults.set(name, error.sentence);
        return "";
      }
    },
  );
  while (pieces.at(-1) === "") pieces.pop();
  const formula = faults.size > 0 ? undefined : `=${namespace}.${definition.name}(${pieces.join(",")})`;
  return { formula, faults };
}
