import { days1904 } from "../cells/day.ts";
import { Problem, type ProblemCode } from "../cells/problem.ts";
import type { ReadOptions } from "../reading/kind.ts";
import { type LeftOut, leftOutInWords, type RowFault } from "../reading/leaveOut.ts";
import { type Argument, type Layout, readArguments } from "../reading/readArguments.ts";
import type { Format } from "../writing/format.ts";
import { type Answer, type AnswerCell, type Result, toCells } from "../writing/result.ts";
import type { AnyFunction, Origin } from "./defineFunction.ts";

export interface EvaluateOptions {
  /** The date system of the workbook the cells come from. */
  readonly dateSystem?: 1900 | 1904;
  /** As in `ReadOptions`. */
  readonly cellOf?: ReadOptions["cellOf"];
}

export type Outcome =
  | {
      readonly ok: true;
      readonly cells: readonly (readonly AnswerCell[])[];
      /** One format a column. */
      readonly formats: readonly Format[];
      /** The first row is headings, which take no number format. */
      readonly headings: boolean;
    }
  | { readonly ok: false; readonly code: ProblemCode; readonly message: string };

/**
 * Works out one call: reads the arguments, computes, lays the answer out in cells.
 *
 * @param given - one entry an argument, as the spreadsheet hands them over; undefined for one left out
 * @returns cells with their formats, or the error code and the sentence to show
 */
export function evaluate(
  definition: AnyFunction,
  given: readonly Argument[],
  { dateSystem = 1900, cellOf }: EvaluateOptions = {},
): Outcome {
  const dayOffset = dateSystem === 1904 ? days1904 : 0;
  let layouts = noLayouts;
  let leftOut: LeftOut | undefined;
  try {
    const read = readArguments(
      definition.parameters,
      given,
      { dayOffset, cellOf },
      definition.rowFault as RowFault | undefined,
    );
    layouts = read.layouts;
    leftOut = read.leftOut;
    const { result } = definition;
    const answer = definition.compute(read.values as never, originIn(layouts, dayOffset));
    const beside = (result.group !== undefined && layouts.get(result.group)) || nowhere;
    const laidOut = result.layOut(answer, beside);
    const said = beside.lying ? (laidOut[0]?.map(() => result.formats[0] as Format) ?? []) : result.formats;
    const formats = leftOut === undefined ? said : sayLeftOut(leftOut, result, laidOut);
    return {
      ok: true,
      cells: toCells(laidOut, formats, dayOffset),
      formats,
      headings: result.shape === "table",
    };
  } catch (error) {
    if (!(error instanceof Problem)) throw error;
    const { code, message } = inSheetTerms(error, definition, layouts);
    // "None" may be true of the rows that are left only.
    return leftOut === undefined
      ? { ok: false, code, message }
      : { ok: false, code: "#VALUE!", message: `${message}; ${leftOutInWords(leftOut)}` };
  }
}

/** A summary says in itself what it leaves out: beside its numbers, or below its table. */
function sayLeftOut(leftOut: LeftOut, { shape, formats }: Result<unknown>, laidOut: Answer[][]): readonly Format[] {
  const words = leftOutInWords(leftOut);
  if (shape !== "table") {
    laidOut[0]?.push(words);
    return [...formats, "text"];
  }
  laidOut.push(formats.map((_, index) => (index === 0 ? words : "")));
  return formats;
}

const noLayouts: ReadonlyMap<string, Layout> = new Map();
const nowhere: Layout = { rows: new Uint32Array(0), height: 0, lying: false, single: false };

const originIn = (layouts: ReadonlyMap<string, Layout>, dayOffset: number): Origin => ({
  dayOffset,
  row: (index, group = "rows") => layouts.get(group)?.rows[index] ?? index + 1,
  single: (group = "rows") => layouts.get(group)?.single ?? false,
});

function inSheetTerms(problem: Problem, definition: AnyFunction, layouts: ReadonlyMap<string, Layout>): Problem {
  const { argument, index } = problem.place;
  if (argument === undefined || index === undefined) return problem;
  const layout = layouts.get(definition.parameters[argument]?.group ?? "rows");
  const row = layout?.rows[index];
  return problem.at(layout === undefined || layout.single || row === undefined ? { argument } : { argument, row });
}
