import { type Cell, isCellError } from "../cells/cell.ts";
import { isoText, showMoment } from "../cells/day.ts";
import { Problem } from "../cells/problem.ts";
import type { AnyFunction, Example, ExampleArgument, ExampleCell } from "../definition/defineFunction.ts";
import { namespace, signature } from "../definition/formulaText.ts";
import { type Topic, topics } from "../definition/topics.ts";
import type { Parameter } from "../reading/parameter.ts";
import type { Format } from "../writing/format.ts";

/** The reference page of one function, in Markdown. */
export function functionPage(definition: AnyFunction): string {
  const parameters = parametersOf(definition);
  return [
    `# ${namespace}.${definition.name}`,
    definition.summary,
    ...(definition.caution ? [`> **Take care.** ${definition.caution.words}`] : []),
    "## How to type it",
    `\`=${signature(definition)}\``,
    parameters.length === 0 ? "It takes no arguments." : argumentTable(parameters),
    "## What it gives",
    whatItGives(definition),
    ...(definition.notes.length > 0 ? ["## Rules", bullets(definition.notes)] : []),
    "## Examples",
    ...definition.examples.map((example: Example, place: number) => exampleText(definition, example, place + 1)),
    ...(definition.sources.length > 0
      ? [
          "## Sources",
          bullets(
            definition.sources.map(({ cite, checked }) => (cite.includes(checked) ? cite : `${cite} (${checked})`)),
          ),
        ]
      : []),
    `Topic: ${topics[definition.topic].toLowerCase()}. Google Sheets: \`=${namespace}_${definition.name}(…)\`. [All functions](README.md)${methodLink(definition.topic)}`,
  ]
    .join("\n\n")
    .concat("\n");
}

/** The topics that have a page on their methods. */
const withMethods: readonly Topic[] = ["counting", "watching", "planning", "benchmarking"];

const methodLink = (topic: Topic): string =>
  withMethods.includes(topic) ? `. [Why this method, and where it fails](../methods/${topic}.md)` : "";

const parametersOf = (definition: AnyFunction): [string, Parameter<unknown>][] => Object.entries(definition.parameters);

const bullets = (lines: readonly string[]): string => lines.map((line) => `- ${line}`).join("\n");

const shapes = { one: "one cell", column: "a cell, a column or a row", block: "a range" } as const;

function argumentTable(parameters: readonly [string, Parameter<unknown>][]): string {
  return markdownTable(
    ["argument", "what to give", "as", "accepted", "if left out"],
    parameters.map(([name, { description, shape, kind, optional, fallback }]) => [
      `\`${name}\``,
      description,
      shapes[shape],
      kind.wanted,
      fallback !== undefined ? literal(fallback ?? null) : optional ? "allowed" : "must be given",
    ]),
  );
}

function whatItGives({ result }: AnyFunction): string {
  const parts = result.headings.join(", ");
  if (result.shape === "table")
    return `A table with the headings ${parts}. It fills the cells below and beside the formula.`;
  if (result.shape === "row") return `${result.headings.length} cells side by side: ${parts}.`;
  if (result.shape === "list") return `${sentence(parts)}, one below the other, without a heading.`;
  return result.shape === "alongside"
    ? `${sentence(parts)}: one cell, or a column for a column.`
    : `One cell: ${parts}.`;
}

const sentence = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

function exampleText(definition: AnyFunction, example: Example, place: number): string {
  const parameters = parametersOf(definition);
  const sheet: { name: string; cells: string[][] }[] = [];
  const typed = example.call.map((argument, index) => {
    const [name, parameter] = parameters[index] as [string, Parameter<unknown>];
    return argument === undefined ? "" : typedArgument(argument, name, parameter, sheet);
  });
  while (typed.at(-1) === "") typed.pop();
  return [
    `**${place}. ${example.shows ?? (example.gives instanceof Problem ? "What it refuses" : "An example")}**`,
    ...(sheet.length > 0 ? [sheetTable(sheet)] : []),
    `\`=${namespace}.${definition.name}(${typed.join(", ")})\``,
    answerText(definition, example),
  ].join("\n\n");
}

function typedArgument(
  argument: ExampleArgument,
  name: string,
  { kind }: Parameter<unknown>,
  sheet: { name: string; cells: string[][] }[],
): string {
  const isDate = kind.holds === "date";
  if (argument !== null && !Array.isArray(argument)) {
    return isDate && typeof argument === "number" ? dateFormula(argument) : literal(argument as Cell);
  }
  const rows = argument === null ? [[null]] : (argument.map((row) => (Array.isArray(row) ? row : [row])) as Cell[][]);
  const first = sheet.reduce((column, part) => column + (part.cells[0]?.length ?? 0), 0);
  const width = rows[0]?.length ?? 1;
  sheet.push({ name, cells: rows.map((row) => row.map((cell) => inSheet(cell, isDate))) });
  const from = `${letter(first)}2`;
  const to = `${letter(first + width - 1)}${rows.length + 1}`;
  return from === to ? from : `${from}:${to}`;
}

const letter = (column: number): string => String.fromCharCode(65 + column);

function sheetTable(sheet: readonly { name: string; cells: string[][] }[]): string {
  const height = Math.max(...sheet.map((part) => part.cells.length));
  const widths = sheet.map((part) => part.cells[0]?.length ?? 1);
  const letters = Array.from({ length: widths.reduce((a, b) => a + b, 0) }, (_, column) => letter(column));
  const headings = sheet.flatMap((part, index) => [
    part.name,
    ...Array(Math.max(0, (widths[index] ?? 1) - 1)).fill(""),
  ]);
  const body = Array.from({ length: height }, (_, row) => [
    `**${row + 2}**`,
    ...sheet.flatMap((part, index) => part.cells[row] ?? Array(widths[index]).fill("")),
  ]);
  return markdownTable(["", ...letters], [["**1**", ...headings], ...body]);
}

function inSheet(cell: Cell, isDate: boolean): string {
  if (cell === null) return "";
  if (isCellError(cell)) return cell.error;
  if (isDate && typeof cell === "number" && cell > 1) return showMoment(cell);
  return typeof cell === "boolean" ? (cell ? "TRUE" : "FALSE") : String(cell);
}

function literal(cell: Cell): string {
  if (typeof cell === "string") return `"${cell.replaceAll('"', '""')}"`;
  return inSheet(cell, false);
}

function dateFormula(day: number): string {
  const [year, month, date] = isoText(day).split("-").map(Number);
  const hours = day - Math.floor(day);
  return `DATE(${year},${month},${date})${hours === 0 ? "" : `+${hours}`}`;
}

function answerText(definition: AnyFunction, { gives }: Example): string {
  if (gives instanceof Problem) return `Gives ${gives.code} with the message: ${gives.message}`;
  const { result } = definition;
  if (!Array.isArray(gives)) return `Gives ${answerCell(gives as ExampleCell, result.formats[0])}`;
  const rows = gives as readonly (readonly ExampleCell[])[];
  if (result.shape === "table") {
    const [headings = [], ...body] = rows;
    return `Gives\n\n${markdownTable(
      headings.map(String),
      body.map((row) => row.map((cell, column) => answerCell(cell, result.formats[column]))),
    )}`;
  }
  const shown = rows.map((row) =>
    row.map((cell, column) => answerCell(cell, result.formats[Math.min(column, result.formats.length - 1)])),
  );
  const headings = result.shape === "row" ? result.headings : (rows[0] ?? []).map(() => result.headings[0] ?? "");
  return `Gives\n\n${markdownTable(headings, shown)}`;
}

function answerCell(cell: ExampleCell, format: Format | undefined): string {
  if (typeof cell === "object" && "about" in cell) return `about ${answerCell(cell.about, format)}`;
  if (typeof cell === "object") return cell.error;
  if (cell === "") return "(blank)";
  if (typeof cell !== "number") return inSheet(cell, false);
  if (format === "date" || format === "date and time") return showMoment(cell);
  return format === "share" ? `${cell} (${(cell * 100).toFixed(1)}%)` : String(cell);
}

function markdownTable(headings: readonly string[], rows: readonly (readonly string[])[]): string {
  const line = (cells: readonly string[]): string =>
    `| ${cells.map((cell) => cell.replaceAll("|", "\\|")).join(" | ")} |`;
  return [line(headings), line(headings.map(() => "---")), ...rows.map(line)].join("\n");
}
