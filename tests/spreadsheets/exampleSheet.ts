import { type Cell, type Cells, isCellError } from "../../src/cells/cell.ts";
import type { AnyFunction, Example } from "../../src/definition/defineFunction.ts";
import { evaluate, type Outcome } from "../../src/definition/evaluate.ts";
import { isDoubtful } from "../../src/hosts/libreoffice/answerCall.ts";
import type { Parameter } from "../../src/reading/parameter.ts";
import { asArgument } from "../functions/exampleCall.ts";
import type { CalcCell } from "./startCalc.ts";
import { type Call, type Constant, place, type Range, type Sheet } from "./writeSheets.ts";

/** An example in the sheet, and what every spreadsheet must answer. */
export interface PlacedExample {
  readonly definition: AnyFunction;
  readonly example: Example;
  readonly outcome: Outcome;
  readonly top: number;
}

// Results start in column A; the widest table has fewer columns than this.
const firstArgument = 16;

/** A sheet with every example of the functions, one below the other, and where each one stands. */
export function exampleSheet(definitions: readonly AnyFunction[]): { sheet: Sheet; placed: readonly PlacedExample[] } {
  const constants = new Map<string, Constant>();
  const calls = new Map<string, Call>();
  const placed: PlacedExample[] = [];
  let top = 0;
  for (const definition of definitions) {
    for (const example of definition.examples) {
      const given = example.call.map(asArgument);
      const outcome = evaluate(definition, given);
      const cells = outcome.ok ? outcome.cells : [[""]];
      let left = firstArgument;
      let height = cells.length;
      const written = given.map((argument): Call["given"][number] => {
        if (argument === undefined || typeof argument === "number" || typeof argument === "boolean") return argument;
        // A text stands in a cell of its own, since only 255 signs of it fit into a formula.
        const range: Cells = Array.isArray(argument) ? (argument as Cells) : [[argument as Cell]];
        const at: Range = { top, left, bottom: top + range.length - 1, right: left + (range[0]?.length ?? 1) - 1 };
        range.forEach((row, down) => {
          row.forEach((cell, across) => {
            if (cell !== null && cell !== "") constants.set(place(top + down, left + across), cell);
          });
        });
        left = at.right + 2;
        height = Math.max(height, range.length);
        return at;
      });
      calls.set(place(top, 0), {
        name: definition.name,
        given: written,
        rows: cells.length,
        columns: cells[0]?.length ?? 1,
      });
      placed.push({ definition, example, outcome, top });
      top += height + 1;
    }
  }
  return { sheet: { constants, calls }, placed };
}

/** What the cells of a placed example must hold in Calc, which has no yes and no but 1 and 0. */
export function expectedInCalc({ definition, example, outcome }: PlacedExample): readonly (readonly CalcCell[])[] {
  if (isNotHandedOver(definition, example)) return [[{ error: "Err:504" }]];
  const parameters = Object.values(definition.parameters) as Parameter<unknown>[];
  if (parameters.some((parameter, index) => isDoubtful(example.call[index] as never, parameter)))
    return [[{ error: "#VALUE!" }]];
  if (!outcome.ok) return [[{ error: outcome.code }]];
  return outcome.cells.map((row) =>
    row.map((cell) => {
      if (cell === null) return "";
      return typeof cell === "boolean" ? Number(cell) : cell;
    }),
  );
}

/** The cells that stand where the answer of a placed example is. */
export const answerOf = (
  sheet: readonly (readonly CalcCell[])[],
  { top }: PlacedExample,
  expected: readonly (readonly CalcCell[])[],
): readonly (readonly CalcCell[])[] =>
  expected.map((row, down) => row.map((_, across) => sheet[top + down]?.[across] ?? ""));

/** Calc answers such a call by itself: one without a required argument, or with an error in a range. */
function isNotHandedOver(definition: AnyFunction, { call }: Example): boolean {
  const parameters = Object.values(definition.parameters) as Parameter<unknown>[];
  return (
    parameters.some(({ optional }, index) => !optional && call[index] === undefined) ||
    call.some((argument) => [argument].flat(2).some(isCellError))
  );
}
