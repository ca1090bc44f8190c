import type { Cell, Cells } from "../../src/cells/cell.ts";
import { dayOf, firstDay, lastDay } from "../../src/cells/day.ts";
import { Problem } from "../../src/cells/problem.ts";
import type { AnyFunction, ExampleArgument } from "../../src/definition/defineFunction.ts";
import type { Parameter } from "../../src/reading/parameter.ts";
import type { Argument } from "../../src/reading/readArguments.ts";
import { asArgument } from "../functions/exampleCall.ts";

const first = dayOf("2024-01-01");
const days = 700;
/** After every date in the columns, and soon enough that some animals are not clear yet. */
const late = dayOf("2026-01-01");

type InRow = (row: number, rows: number) => Cell;

const dateInRow = (row: number): number => first + ((row * 104_729) % days);
const oneOf =
  (...words: readonly Cell[]): InRow =>
  (row) =>
    words[row % words.length] ?? null;

// Columns whose values must agree with those of another column, or that can be no other than these, by their names.
const byName: Readonly<Record<string, InRow>> = {
  lame: (row) => row % 7,
  lame_before: (row) => row % 7,
  lame_after: (row) => row % 5,
  seen: (row) => 20 + (row % 480),
  seen_before: (row) => 20 + (row % 480),
  seen_after: (row) => 20 + (row % 480),
  group_size: (row) => 600 + (row % 90),
  groups: (row, rows) => `group ${row % Math.ceil(rows / 10)}`,
  // Each group of the records is among them once.
  standard_groups: (row) => `group ${row}`,
  sale_groups: oneOf("ewes", "lambs", null),
  first: oneOf("lame", "sound", "sound"),
  second: oneOf("lame", "sound", "sound", "lame"),
  flocks: (row) => `flock ${row}`,
  medicines: (row) => (row % 3 === 0 ? null : `medicine ${row % 3}`),
  products: (row) => `product ${row % 40}`,
  lesions: oneOf("footrot", "interdigital dermatitis", "toe granuloma", "white line abscess", "shelly hoof"),
  states: oneOf("lame", "treated", "sound", "lame", "recovered"),
  feet: oneOf("LF", "RH", "LF, RH", null),
  produce: oneOf("meat", "milk"),
  basis: oneOf("authorised"),
  // An animal has about five records. Built anew for each row, as a workbook's cells are: equal text, not one object.
  tags: (row, rows) => tagInRow(row, rows),
  tag: (row, rows) => tagInRow(row, rows),
  sale_tags: (row, rows) => tagOf((row * 11) % Math.ceil(rows / 5)),
  treated: (row) => dateInRow(row) + (row % 9),
  sound_on: (row) => (row % 4 === 0 ? null : dateInRow(row) + 9 + (row % 18)),
  left_on: (row) => (row % 11 === 0 ? dateInRow(row) + 40 : null),
  done: (row) => (row % 3 === 0 ? null : dateInRow(row) + 1),
};

// Columns of which any value of their kind will do.
const byKind: Readonly<Record<string, InRow>> = {
  date: dateInRow,
  number: (row) => 20 + ((row * 31) % 60),
};

// Read from JSON, as hosts hand texts over: a text put together of parts is copied when it is first looked at.
const tagOf = (animal: number): string =>
  JSON.parse(`"ZZ 0 ${100_000 + (animal % 7)} ${String(Math.floor(animal / 7)).padStart(5, "0")}"`) as string;

const tagInRow = (row: number, rows: number): string => tagOf((row * 7919) % Math.ceil(rows / 5));

/** The names of the columns and blocks that grow; none for a function of single cells. */
export const growing = ({ parameters }: AnyFunction): readonly string[] =>
  Object.entries(parameters as Record<string, Parameter<unknown>>)
    .filter(([name, parameter]) => grows(name, parameter))
    .map(([name]) => name);

// The heading row and the cell with a date are blocks too, but of one row.
const grows = (name: string, { shape }: Parameter<unknown>): boolean =>
  shape === "column" || (shape === "block" && name !== "headings" && name !== "date_cell");

/** The most rows a function can be given: no two head counts are of one day, and the calendar of a sheet has an end. */
export const mostRows = ({ name }: AnyFunction): number =>
  name === "SHEEPDAYS" ? lastDay - firstDay + 1 : Number.POSITIVE_INFINITY;

/**
 * A call of a function over so many rows of invented records. Its single cells are those of its first example that is
 * answered; single dates lie after all the records.
 *
 * @throws Error when the bench does not know what to put into a column
 */
export function callOverRows(definition: AnyFunction, rows: number): readonly Argument[] {
  const example = definition.examples.find(({ gives }) => !(gives instanceof Problem));
  if (example === undefined) throw new Error(`${definition.name} has no example that is answered`);
  const parameters = Object.entries(definition.parameters as Record<string, Parameter<unknown>>);
  return parameters.map(([name, parameter], index) => {
    const shown = example.call[index];
    if (parameter.shape === "one") return single(parameter, shown);
    if (parameter.shape === "block")
      return grows(name, parameter) ? blockOf(asArgument(shown), rows) : asArgument(shown);
    if (rows > mostRows(definition)) throw new Error(`${definition.name} takes at most ${mostRows(definition)} rows`);
    const inRow = onePerDay(definition, name) ?? byName[name] ?? byKind[parameter.kind.holds];
    if (inRow === undefined) throw new Error(`${definition.name}: the bench does not know what goes into ${name}`);
    return cellsOf(inRow, rows);
  });
}

const cellsOf = (inRow: InRow, rows: number): Cells => Array.from({ length: rows }, (_, row) => [inRow(row, rows)]);

/** A column of tags, or of dates, as the functions get them. */
export const columnOf = (holds: "tags" | "dates", rows: number): Cells =>
  cellsOf(holds === "tags" ? tagInRow : dateInRow, rows);

const onePerDay = (definition: AnyFunction, name: string): InRow | undefined =>
  name === "dates" && Number.isFinite(mostRows(definition)) ? (row) => firstDay + row : undefined;

const single = ({ kind }: Parameter<unknown>, shown: ExampleArgument): Argument =>
  kind.holds === "date" && typeof shown === "number" ? late : asArgument(shown);

/** The rows of an example over and over. A text that ends in digits gets others, so that each row is another record. */
function blockOf(shown: Argument, rows: number): Cells {
  const pattern: Cells = Array.isArray(shown) ? (shown as Cells) : [[shown as Cell]];
  return Array.from({ length: rows }, (_, row) =>
    (pattern[row % pattern.length] ?? []).map((cell) =>
      typeof cell === "string" ? cell.replace(/\d{5}$/, () => String(10_000 + (row % 90_000))) : cell,
    ),
  );
}
