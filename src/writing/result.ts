import type { Format } from "./format.ts";

/** A value as a computation gives it; undefined and null are written as an empty text. */
export type Answer = number | string | boolean | null | undefined;

/** A cell as a function gives it: never an error, and nothing is an empty text. */
export type AnswerCell = Exclude<Answer, null | undefined>;

/** Where the rows of the columns read stood, so that a result can be written alongside them. */
interface Alongside {
  readonly rows: Uint32Array;
  readonly height: number;
  readonly lying: boolean;
}

/** What a function gives, and how it is laid out in cells. `R` is what the computation returns. */
export interface Result<R> {
  readonly shape: "single" | "row" | "list" | "table" | "alongside";
  /** Names of the parts, in plain words: one for a single value, the headings of a table. */
  readonly headings: readonly string[];
  /** One format for each part. */
  readonly formats: readonly Format[];
  /** Rows made anew at each call, which `toCells` turns into cells where they stand. */
  readonly layOut: (answer: R, alongside: Alongside) => Answer[][];
  /** The group of columns whose rows an `alongside` result follows. */
  readonly group?: string;
}

/** One value in one cell. */
export const single = (name: string, format: Format): Result<Answer> => ({
  shape: "single",
  headings: [name],
  formats: [format],
  layOut: (answer) => [[answer]],
});

/** A few values side by side, without headings: low and high. */
export const row = <R>(...parts: readonly TableColumn<R>[]): Result<R> => ({
  shape: "row",
  headings: parts.map(([heading]) => heading),
  formats: parts.map(([, format]) => format),
  layOut: (answer) => [parts.map(([, , pick]) => pick(answer))],
});

/** Values below each other, as many as there are, without a heading. */
export const list = (name: string, format: Format): Result<readonly Answer[]> => ({
  shape: "list",
  headings: [name],
  formats: [format],
  layOut: (answers) => answers.map((answer) => [answer]),
});

/** Heading, format, and the field it shows. */
export type TableColumn<R> = readonly [heading: string, format: Format, pick: (record: R) => Answer];

/**
 * Records under a heading row. With no records, one row says so in words, since a lone heading
 * looks like a function that has not worked. Records may be made one by one as they are asked for: a million of them
 * need not be in memory beside their cells.
 */
export const table = <R>(whenEmpty: string, ...columns: readonly TableColumn<R>[]): Result<Iterable<R>> => ({
  ...tableOf(columns),
  layOut(records) {
    const rows = headed(columns);
    for (const record of records) {
      const cells: Answer[] = new Array(columns.length);
      for (let index = 0; index < columns.length; index++) cells[index] = (columns[index] as TableColumn<R>)[2](record);
      rows.push(cells);
    }
    return orEmpty(rows, whenEmpty);
  },
});

/** Heading, format, and what stands in a line, counted from 0. */
type LineColumn<R> = readonly [heading: string, format: Format, pick: (answer: R, line: number) => Answer];

/** The same for an answer that is asked line by line, since its lines are too many to be an object each. */
export const lineTable = <R extends { readonly count: number }>(
  whenEmpty: string,
  ...columns: readonly LineColumn<R>[]
): Result<R> => ({
  ...tableOf(columns),
  layOut(answer) {
    const rows = headed(columns);
    for (let line = 0; line < answer.count; line++) {
      const cells: Answer[] = new Array(columns.length);
      for (let index = 0; index < columns.length; index++)
        cells[index] = (columns[index] as LineColumn<R>)[2](answer, line);
      rows.push(cells);
    }
    return orEmpty(rows, whenEmpty);
  },
});

type Headed = readonly (readonly [heading: string, format: Format, ...unknown[]])[];

const tableOf = (columns: Headed) => ({
  shape: "table" as const,
  headings: columns.map(([heading]) => heading),
  formats: columns.map(([, format]) => format),
});

const headed = (columns: Headed): Answer[][] => [columns.map(([heading]) => heading)];

function orEmpty(rows: Answer[][], whenEmpty: string): Answer[][] {
  if (rows.length === 1) rows.push((rows[0] ?? []).map((_, index) => (index === 0 ? whenEmpty : "")));
  return rows;
}

/** One value for each row of the columns given, blank where the row is blank. */
export const alongside = (name: string, format: Format, group = "rows"): Result<readonly Answer[]> => ({
  shape: "alongside",
  headings: [name],
  formats: [format],
  group,
  layOut(answers, { rows, height, lying }) {
    // A single blank cell still needs its one answer: nothing.
    const cells: Answer[][] = new Array(Math.max(height, 1));
    // The rows of the answers rise, so that one pass finds them all and makes each cell once.
    let next = 0;
    for (let at = 0; at < cells.length; at++) cells[at] = [rows[next] === at + 1 ? answers[next++] : ""];
    return lying ? [cells.map(([cell]) => cell)] : cells;
  },
});

/**
 * Turns answers into cells where they stand: nothing becomes `""` (a null would show as 0), a date goes back to the workbook's own date
 * system, and text never starts a formula.
 *
 * @throws RangeError on a number that is not finite: a fault of the computation, never of the user
 */
export function toCells(answers: Answer[][], formats: readonly Format[], dayOffset: number): AnswerCell[][] {
  const offsets = formats.map((format) => (isDate(format) ? dayOffset : 0));
  const lastOffset = offsets.at(-1) ?? 0;
  for (const record of answers)
    for (let index = 0; index < record.length; index++)
      record[index] = toCell(record[index], offsets[index] ?? lastOffset);
  return answers as AnswerCell[][];
}

function toCell(answer: Answer, offset: number): AnswerCell {
  if (answer === undefined || answer === null) return "";
  if (typeof answer === "string") return withoutFormula(answer);
  if (typeof answer === "boolean") return answer;
  if (!Number.isFinite(answer)) throw new RangeError(`a result is not a finite number: ${answer}`);
  return answer - offset;
}

const isDate = (format: Format | undefined): boolean => format === "date" || format === "date and time";

const startsFormula: ReadonlySet<number> = new Set(Array.from("=+-@\t\r", (sign) => sign.charCodeAt(0)));

// A tag or a group name that came from elsewhere must stay text when the cell is copied as values and edited.
const withoutFormula = (text: string): string => (startsFormula.has(text.charCodeAt(0)) ? `'${text}` : text);
