import type { AnyFunction } from "../../definition/defineFunction.ts";
import type { Area, Place } from "../../workbook/address.ts";
import type { Format } from "../../writing/format.ts";
import type { Edition } from "./edition.ts";
import { type Emphasis, isCentred, type Look } from "./looks.ts";
import { cellsOn, fixedCell, rowCell } from "./references.ts";
import type { SheetAuthor } from "./sheetAuthor.ts";

/** Where a list that a function spills stands, and which cells its columns fill. */
export interface PlacedList {
  readonly gives: AnyFunction;
  /** Of its headings, the first cell of the list. */
  readonly at: Place;
  /** As many rows of a column as formulas are to look at, without the heading. */
  readonly column: (heading: string, rows: number) => Area;
  readonly range: (heading: string, rows: number) => string;
  /** A cell of the first row under the headings, with a row that moves. */
  readonly cell: (heading: string) => string;
}

interface ListWriting {
  readonly question: string;
  /** Without `=`; calls the function that the list was placed for. */
  readonly formula: string;
  /** When there is no list, and what is said in its place. */
  readonly unless?: readonly [when: string, words: string];
  /** Rows in which lines are drawn; the list itself may go on below, where it can grow. */
  readonly rows: number;
  /** Rows it may fill where it cannot grow, if not those. */
  readonly room?: number;
  /** Whether it never has more lines than that. */
  readonly fits?: boolean;
  /** Which rows stand out, as a formula of the cells of the first row under the headings. */
  readonly strong?: (cell: (heading: string) => string) => string;
  /** How the list's columns are dressed: whole columns of the sheet, or the rows of the list only. */
  readonly dress?: "columns" | "rows";
}

const looks: Partial<Record<Format, Look>> = {
  date: "workedDate",
  share: "workedPercent",
  count: "workedCount",
  days: "workedCount",
  ml: "workedMl",
  rate: "workedRate",
  number: "workedNumber",
};

/** How a column of a list looks that holds such values. */
const lookOf = (format: Format): Look => looks[format] ?? "worked";

/** Where a list stands; other cells can name its columns before it is written. */
export function placeList(sheet: string, gives: AnyFunction, at: Place): PlacedList {
  const columnOf = (heading: string): number => {
    const step = gives.result.headings.indexOf(heading);
    if (step < 0) throw new RangeError(`${gives.name} has no column ${heading}`);
    return at.column + step;
  };
  const column = (heading: string, rows: number): Area => ({
    top: at.row + 1,
    left: columnOf(heading),
    bottom: at.row + rows,
    right: columnOf(heading),
  });
  return {
    gives,
    at,
    column,
    range: (heading, rows) => cellsOn(sheet, column(heading, rows)),
    cell: (heading) => rowCell({ row: at.row + 1, column: columnOf(heading) }),
  };
}

/** Writes a list under its question: the headings come with it, and its columns are dressed for what they hold. */
export function writeList(
  sheet: SheetAuthor,
  list: PlacedList,
  { question, formula, unless, rows, room = rows, fits = false, strong, dress = "columns" }: ListWriting,
): void {
  writeHead(sheet, list, question, dress === "rows" ? rows : 0);
  sheet.put(list.at, {
    list: formula,
    room: { rows: room + 1, columns: list.gives.result.formats.length },
    mayBeLonger: !fits,
    ...(unless === undefined ? {} : { unless: [unless[0], `"${unless[1]}"`] as const }),
  });
  underline(sheet, list, rows, strong && [strong(list.cell), "strong"]);
}

/** @param headings - where they do not come with the list */
function writeHead(
  sheet: SheetAuthor,
  { gives, at: { row, column } }: PlacedList,
  question: string,
  dressed: number,
  headings: readonly string[] = [],
): void {
  sheet.put({ row: row - 1, column }, question, "question");
  gives.result.formats.forEach((format, step) => {
    const look = lookOf(format);
    const here = column + step;
    sheet.put({ row, column: here }, headings[step] ?? null, isCentred(look) ? "workedHeadingCentre" : "workedHeading");
    if (dressed > 0) sheet.dress({ top: row + 1, left: here, bottom: row + dressed, right: here }, look);
  });
}

function underline(
  sheet: SheetAuthor,
  { gives, at: { row, column }, cell }: PlacedList,
  rows: number,
  strong?: readonly [formula: string, emphasis: Emphasis],
): void {
  const { formats, headings } = gives.result;
  sheet.emphasize(
    { top: row + 1, left: column, bottom: row + rows, right: column + formats.length - 1 },
    ...(strong ? [strong] : []),
    [`${cell(headings[0] ?? "")}<>""`, "line"],
  );
}

/** Writes a list whose rows are known, in the place of the formula that gives it; or words where there is none. */
export function writeValues<R>(
  sheet: SheetAuthor,
  list: PlacedList,
  question: string,
  rows: Iterable<R> | string,
): void {
  const { result } = list.gives;
  const [, ...lines] = typeof rows === "string" ? [[], [rows]] : result.layOut(rows, besideNothing);
  writeHead(sheet, list, question, lines.length, result.headings);
  lines.forEach((cells, step) => {
    sheet.putRow(
      { ...list.at, row: list.at.row + 1 + step },
      cells.map((answer) => answer ?? null),
    );
  });
  underline(sheet, list, lines.length);
}

const besideNothing = { rows: new Uint32Array(0), height: 0, lying: false };

/**
 * A line about a list. It takes the list's own words where it is empty or failed, and states numbers only of what was
 * worked out; of a list that is longer than its room it says how many lines more there are.
 *
 * @param filled - the heading of a column that is filled in every line of the list, and not its first
 * @param numbers - what is said of a list with lines
 * @param room - rows the list may fill where it cannot grow; left out for one that never has more lines
 */
export function summaryOf(
  edition: Edition,
  { at, gives, cell }: PlacedList,
  { filled, numbers, room }: { readonly filled: string; readonly numbers: string; readonly room?: number },
): string {
  const first = cell(gives.result.headings[0] ?? "");
  const more = room === undefined ? "" : fixedCell({ ...at, row: at.row + room });
  const said = edition === "excel" || more === "" ? numbers : `${numbers}&IF(LEN(${more})=0,"",", "&${more})`;
  return `IF(ISERROR(${fixedCell(at)}),"Not worked out: see below.",IF(LEN(${cell(filled)})=0,${first}&"",${said}))`;
}

/** Dresses the whole columns of a list; to be called before what stands above it is written. */
export function dressColumns(sheet: SheetAuthor, { gives, at }: PlacedList): void {
  gives.result.formats.forEach((format, step) => {
    sheet.columnLook(at.column + step, at.column + step, lookOf(format));
  });
}
