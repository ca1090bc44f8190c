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
 * Lays an example out: its columns side by side from A1 with their headings in row 1, and the formula over them.
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
    return argument === undefined ? "" : typedArgument(argument, name, parameter, parts);
  });
  while (typed.at(-1) === "") typed.pop();
  return {
    sheet: parts.length > 0 ? sideBySide(parts) : undefined,
    formula: `=${namespace}.${definition.name}(${typed.join(", ")})`,
    answer: shown(definition, example),
  };
}

interface Part {
  readonly name: string;
  readonly cells: readonly (readonly string[])[];
}

function typedArgument(argument: ExampleArgument, name: string, { kind }: Parameter<unknown>, parts: Part[]): string {
  const isDate = kind.holds === "date";
  if (argument !== null && !Array.isArray(argument))
    return isDate && typeof argument === "number" ? dateFormula(argument) : literal(argument as Cell);
  const rows = argument === null ? [[null]] : (argument.map((row) => (Array.isArray(row) ? row : [row])) as Cell[][]);
  const first = parts.reduce((column, part) => column + (part.cells[0]?.length ?? 0), 0);
  const width = rows[0]?.length ?? 1;
  parts.push({ name, cells: rows.map((row) => row.map((cell) => inSheet(cell, isDate))) });
  const from = `${letter(first)}2`;
  const to = `${letter(first + width - 1)}${rows.length + 1}`;
  return from === to ? from : `${from}:${to}`;
}

const letter = (column: number): string => String.fromCharCode(65 + column);

function sideBySide(parts: readonly Part[]): TextTable {
  const height = Math.max(...parts.map((part) => part.cells.length));
  const widths = parts.map((part) => part.cells[0]?.length ?? 1);
  const blanks = (count: number): string[] => Array<string>(Math.max(0, count)).fill("");
  const letters = Array.from({ length: widths.reduce((a, b) => a + b, 0) }, (_, column) => letter(column));
  const names = parts.flatMap((part, index) => [part.name, ...blanks((widths[index] ?? 1) - 1)]);
  const body = Array.from({ length: height }, (_, row) => [
    String(row + 2),
    ...parts.flatMap((part, index) => part.cells[row] ?? blanks(widths[index] ?? 1)),
  ]);
  return { headings: ["", ...letters], rows: [["1", ...names], ...body] };
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
  if (typeof cell === "object" && "about" in cell) return `about ${answerCell(cell.about, format)}`;
  if (typeof cell === "object") return cell.error;
  if (cell === "") return "(blank)";
  if (typeof cell !== "number") return inSheet(cell, false);
  if (format === "date" || format === "date and time") return showMoment(cell);
  return format === "share" ? `${cell} (${(cell * 100).toFixed(1)}%)` : String(cell);
}
