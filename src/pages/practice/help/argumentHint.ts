import { type Cell, isBlankCell } from "../../../cells/cell.ts";
import { showMoment } from "../../../cells/day.ts";
import { Problem } from "../../../cells/problem.ts";
import type { AnyFunction } from "../../../definition/defineFunction.ts";
import { dateFormula, literal } from "../../../definition/exampleInSheet.ts";
import { namespace } from "../../../definition/formulaText.ts";
import type { Parameter } from "../../../reading/parameter.ts";
import { footName } from "../../../workbook/formula/functionName.ts";
import { isCall, tokenize } from "../../../workbook/formula/tokenize.ts";
import { shownCell } from "../../parts/explain/shownCells.ts";
import { sheetWords } from "../sheetWords.ts";

/** What is to be given where the caret stands in a formula. */
export interface ArgumentHint {
  /** `FOOT.CLEARDATE` */
  readonly functionName: string;
  /** `treated` */
  readonly argument: string;
  /** What it means and what stands where it is left out. */
  readonly sentence: string;
  /** What may stand there, from the function's own examples; "" where none gives it. */
  readonly example: string;
}

/**
 * The argument that is being typed, in words.
 *
 * @param before - the formula up to the caret, with its `=`
 * @returns undefined where the caret is in no argument of a FOOT function
 * @example
 * argumentHint("=FOOT.FLOCKPREV(2,", catalogue)?.argument // → "examined"
 */
export function argumentHint(before: string, definitions: readonly AnyFunction[]): ArgumentHint | undefined {
  const known = callsAround(before).flatMap(({ name, place }) => {
    const definition = definitions.find((each) => each.name === footName(name));
    return definition ? [{ definition, place }] : [];
  });
  const at = known.at(-1);
  if (!at) return undefined;
  const { definition, place } = at;
  const parameters = Object.entries(definition.parameters as Record<string, Parameter<unknown>>);
  const [argument, parameter] = parameters[place] ?? [];
  const functionName = `${namespace}.${definition.name}`;
  if (argument === undefined || !parameter)
    return { functionName, argument: "", sentence: sheetWords.noMore(parameters.length), example: "" };
  const { description, optional, fallback } = parameter;
  const left = optional ? ` ${sheetWords.mayBeLeftOut(fallback === undefined ? "" : literal(fallback))}` : "";
  return {
    functionName,
    argument,
    sentence: `${description}.${left}`.replace("..", "."),
    example: exampleOf(definition, place, parameter),
  };
}

/** The calls around the caret, the innermost last, and which argument of each the caret is in. */
function callsAround(before: string): readonly { readonly name: string; readonly place: number }[] {
  if (!before.startsWith("=")) return [];
  const formula = before.slice(1);
  // Half-way through a text or the name of a sheet, its quote is still open.
  const tokens = tokenize(formula) ?? tokenize(`${formula}"`) ?? tokenize(`${formula}'`) ?? tokenize(`${formula}]`);
  const around: { name: string | undefined; place: number }[] = [];
  for (const [at, { kind }] of (tokens ?? []).entries()) {
    if (kind === "open")
      around.push({ name: isCall(tokens ?? [], at - 1) ? tokens?.[at - 1]?.text : undefined, place: 0 });
    else if (kind === "close") around.pop();
    else if (kind === "separator") {
      const call = around.at(-1);
      if (call) call.place += 1;
    }
  }
  return around.flatMap(({ name, place }) => (name === undefined ? [] : [{ name, place }]));
}

const mostShown = 3;

function exampleOf({ examples }: AnyFunction, index: number, { kind }: Parameter<unknown>): string {
  for (const { call, gives } of examples) {
    const given = call[index];
    if (given === undefined || given === null || gives instanceof Problem) continue;
    if (!Array.isArray(given)) {
      const cell = given as Cell;
      return sheetWords.example(kind.holds === "date" && typeof cell === "number" ? dateFormula(cell) : literal(cell));
    }
    const cells = (given as readonly (Cell | readonly Cell[])[]).flat() as readonly Cell[];
    const first = cells.filter((cell) => !isBlankCell(cell)).slice(0, mostShown);
    const shown = first.map((cell) =>
      kind.holds === "date" && typeof cell === "number" ? showMoment(cell) : shownCell(cell, "text"),
    );
    if (first.length > 0) return sheetWords.exampleCells(`${shown.join(", ")}${cells.length > mostShown ? ", …" : ""}`);
  }
  return "";
}
