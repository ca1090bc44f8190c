import { type Cell, isCellError } from "../cells/cell.ts";
import { isoText, showMoment } from "../cells/day.ts";
import { Problem, type ProblemCode } from "../cells/problem.ts";
import type { Parameter } from "../reading/parameter.ts";
import type { Format } from "../writing/format.ts";
import type { AnyFunction, Example, ExampleArgument, ExampleCell } from "./defineFunction.ts";
import { namespace } from "./formulaText.ts";

/** An example as a person would lay it out in a sheet, every cell as text. */
export interface ExampleInSheet {
  /** The cells that the formula refers to; none where the arguments are typed into it. */
  readonly sheet: TextTable | undefined;
  readonly formula: string;
  readonly answer: ExampleShown;
}

export interface TextTable {
  readonly headings: readonly string[];
  readonly rows: readonly (readonly string[])[];
}

export type ExampleShown =
  | { readonly refused: ProblemCode; readonly message: string }
  | { readonly one: string }
  | { readonly table: TextTable };

/**
 * Lays an example out: its columns side by side from A1 with their headings in row 1, and the formula over them. A
 * function that takes a heading row finds it in row 1, with its rows below.
 *
 * @example
 * exampleInSheet(flockPrevalenceFunction, { call: [4, 20], gives: 0.2 })
 * // → { sheet: undefined, formula: "=FOOT.FLOCKPREV(4, 20)", answer: { one: "0.2 (20.0%)" } }
 */
export function exampleInSheet(definition: AnyFunction, example: Example): ExampleInSheet {
  const parameters: [string, Parameter<unknown>][] = Object.entries(definition.parameters);
  const parts: Part[] = [];
  const typed = example.call.map((argument, index) => {
    const [name, parameter] = parameters[index] as [string, Parameter<unknown>];
    if (argument === undefined) return "";
    const [heading, below] = [headingRow(example.call[index - 1], parameters[index - 1]), parameter.shape === "block"];
    if (heading && below && Array.isArray(argument)) return rowsBelow(argument, parameter, parts);
    if (headingRow(argument, parameters[index]) && Array.isArray(example.call[index + 1]))
      return headingAbove(argument, parameter, parts);
    return typedArgument(argument, name, parameter, parts);
  });
  while (typed.at(-1) === "") typed.pop();
  return {
    sheet: parts.length > 0 ? sideBySide(parts) : undefined,
    formula: `=${namespace}.${definition.name}(${typed.join(", ")})`,
    answer: shown(definition, example),
  };
}

interface Part {
  /** What stands in row 1. */
  readonly headings: readonly string[];
  readonly cells: readonly (readonly string[])[];
}

/** Whether an argument is one row of a rectangle of cells. */
const headingRow = (argument: ExampleArgument, parameter: [string, Parameter<unknown>] | undefined): boolean =>
  parameter?.[1].shape === "block" && Array.isArray(argument) && argument.length === 1 && Array.isArray(argument[0]);

function headingAbove(argument: ExampleArgument, parameter: Parameter<unknown>, parts: Part[]): string {
  const [headings = []] = textRows(argument, parameter);
  const first = widthOf(parts);
  parts.push({ headings, cells: [] });
  return rangeText(first, headings.length, 1, 1);
}

function rowsBelow(argument: ExampleArgument, parameter: Parameter<unknown>, parts: Part[]): string {
  const { headings } = parts.pop() as Part;
  const cells = textRows(argument, parameter);
  const first = widthOf(parts);
  parts.push({ headings, cells });
  return rangeText(first, cells[0]?.length ?? 1, 2, cells.length + 1);
}

function typedArgument(argument: ExampleArgument, name: string, parameter: Parameter<unknown>, parts: Part[]): string {
  if (argument !== null && !Array.isArray(argument)) {
    const cell = argument as Cell;
    return typeof cell === "number" && isDay(cell, parameter) ? dateFormula(cell) : literal(cell);
  }
  const cells = textRows(argument, parameter);
  const first = widthOf(parts);
  const width = cells[0]?.length ?? 1;
  parts.push({ headings: [name, ...Array<string>(width - 1).fill("")], cells });
  return rangeText(first, width, 2, cells.length + 1);
}

function textRows(argument: ExampleArgument, parameter: Parameter<unknown>): string[][] {
  const rows = Array.isArray(argument) ? argument.map((row) => (Array.isArray(row) ? row : [row])) : [[argument]];
  return (rows as Cell[][]).map((row) => row.map((cell) => inSheet(cell, isDay(cell, parameter))));
}

// Where any cell is taken nothing says which numbers are days; no other number in an example lies in those years.
const isDay = (cell: Cell, { kind }: Parameter<unknown>): boolean =>
  kind.holds === "date" || (kind.holds === "anything" && typeof cell === "number" && cell > 40_000 && cell < 60_000);

const widthOf = (parts: readonly Part[]): number => parts.reduce((width, { headings }) => width + headings.length, 0);

function rangeText(column: number, width: number, top: number, bottom: number): string {
  const [from, to] = [`${letter(column)}${top}`, `${letter(column + width - 1)}${bottom}`];
  return from === to ? from : `${from}:${to}`;
}

const letter = (column: number): string => String.fromCharCode(65 + column);

function sideBySide(parts: readonly Part[]): TextTable {
  const height = Math.max(...parts.map((part) => part.cells.length));
  const letters = Array.from({ length: widthOf(parts) }, (_, column) => letter(column));
  const body = Array.from({ length: height }, (_, row) => [
    String(row + 2),
    ...parts.flatMap(({ headings, cells }) => headings.map((_, column) => cells[row]?.[column] ?? "")),
  ]);
  return { headings: ["", ...letters], rows: [["1", ...parts.flatMap(({ headings }) => headings)], ...body] };
}

function inSheet(cell: Cell, isDate: boolean): string {
  if (cell === null) return "";
  if (isCellError(cell)) return cell.error;
  if (isDate && typeof cell === "number" && cell > 1) return showMoment(cell);
  return typeof cell === "boolean" ? (cell ? "TRUE" : "FALSE") : String(cell);
}

/**
 * A cell as it is typed into a formula.
 *
 * @example
 * literal('say "hold"') // → '"say ""hold"""'
 */
export function literal(cell: Cell): string {
  if (typeof cell === "string") return `"${cell.replaceAll('"', '""')}"`;
  return inSheet(cell, false);
}

/**
 * A day, with its hour when it has one, as it is typed into a formula so that no spreadsheet takes it for another day.
 *
 * @example
 * dateFormula(46095) // → "DATE(2026,3,14)"
 */
export function dateFormula(moment: number): string {
  const [year, month, date] = isoText(moment).split("-").map(Number);
  const hours = moment - Math.floor(moment);
  return `DATE(${year},${month},${date})${hours === 0 ? "" : `+${hours}`}`;
}

function shown({ result }: AnyFunction, { gives }: Example): ExampleShown {
  if (gives instanceof Problem) return { refused: gives.code, message: gives.message };
  if (!Array.isArray(gives)) return { one: answerCell(gives as ExampleCell, result.formats[0]) };
  const rows = gives as readonly (readonly ExampleCell[])[];
  const cellsOf = (row: readonly ExampleCell[]) =>
    row.map((cell, column) => answerCell(cell, result.formats[Math.min(column, result.formats.length - 1)]));
  if (result.shape === "table") {
    const [headings = [], ...body] = rows;
    return { table: { headings: headings.map(String), rows: body.map(cellsOf) } };
  }
  const headings = result.shape === "row" ? result.headings : (rows[0] ?? []).map(() => result.headings[0] ?? "");
  return { table: { headings, rows: rows.map(cellsOf) } };
}

function answerCell(cell: ExampleCell, format: Format | undefined): string {
  if (typeof cell === "object" && "about" in cell) return `about ${answerCell(shortened(cell.about), format)}`;
  if (typeof cell === "object") return cell.error;
  if (cell === "") return "(blank)";
  if (typeof cell !== "number") return inSheet(cell, false);
  if (format === "date" || format === "date and time") return showMoment(cell);
  const short = shortened(cell);
  const text = format === "share" ? `${short} (${(cell * 100).toFixed(1)}%)` : String(short);
  return short === cell ? text : `about ${text}`;
}

/** As many digits as a person compares. */
const shortened = (value: number): number => (Number.isInteger(value) ? value : Number(value.toPrecision(6)));
