import type { AnyFunction } from "../../definition/defineFunction.ts";
import type { Outcome } from "../../definition/evaluate.ts";
import { type Format, patternFor, formats as patterns } from "../../writing/format.ts";
import type { AnswerCell } from "../../writing/result.ts";

/** A number that brings its own look, which Excel takes where it knows data types. */
interface FormattedNumber {
  readonly type: "FormattedNumber";
  readonly basicValue: number;
  readonly numberFormat: string;
}

type ExcelCell = number | string | boolean | FormattedNumber;
export type ExcelAnswer = ExcelCell | readonly (readonly ExcelCell[])[];

// A formatted number is some 70 characters on its way to Excel, which on the web takes at most 5 MB an answer (its
// documents, read 2026-11).
const mostFormattedCells = 20_000;

/**
 * The cells of an answer in the form Excel takes.
 *
 * @param formattedNumbers - whether this Excel takes numbers with a format; others get the plain number
 * @returns one value for a function that gives one cell, otherwise rows of values
 */
export function toExcel(
  definition: AnyFunction,
  outcome: Outcome & { readonly ok: true },
  formattedNumbers: boolean,
): ExcelAnswer {
  const { cells, headings, formats } = outcome;
  const formatted = formattedNumbers && cells.length * (cells[0]?.length ?? 0) <= mostFormattedCells;
  const rows = formatted
    ? cells.map((row, index) =>
        headings && index === 0 ? row : row.map((cell, column) => excelCell(cell, formats[column])),
      )
    : cells;
  return definition.result.shape === "single" ? (rows[0]?.[0] ?? "") : rows;
}

function excelCell(cell: AnswerCell, format: Format | undefined): ExcelCell {
  if (typeof cell !== "number" || format === undefined || !changesLook(format)) return cell;
  return { type: "FormattedNumber", basicValue: cell, numberFormat: patternFor(format, cell) };
}

// A whole number looks the same without a format, and a plain number leaves the user's own cell format alone.
const changesLook = (format: Format): boolean => patterns[format] !== "General" && patterns[format] !== "0";
