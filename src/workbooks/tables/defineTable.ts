import type { Cell } from "../../cells/cell.ts";
import type { Look } from "../writing/looks.ts";
import type { Rule } from "../writing/sheetAuthor.ts";

/** A column of a table that is typed: all that is known of it, wherever it comes to stand. */
export interface Column<K extends string = string> {
  readonly heading: string;
  /** In characters. */
  readonly width: number;
  readonly look: Look;
  /** What may be typed; where it hangs on another cell of the row, `cell` names that one for the first record. */
  readonly rule?: Rule | ((cell: (key: K) => string) => Rule);
}

export interface Table<K extends string = string> {
  readonly name: string;
  /** How many records it has room for. */
  readonly room: number;
  readonly columns: Readonly<Record<K, Column<K>>>;
  readonly keys: readonly K[];
  readonly headings: readonly string[];
  /** A column as formulas name it. @example cases.of("tag") // → "Cases[Tag]" */
  readonly of: (key: K) => string;
  /** Its headings, and all its records, for spreadsheets that know no `Cases[#Headers]` and no `Cases[#Data]`. */
  readonly headingCells: string;
  readonly records: string;
  /** A column's place among the columns, from 0. */
  readonly placeOf: (key: K) => number;
}

export type KeyOf<T> = T extends Table<infer K> ? K : never;

/** A record by the keys of its table; what is not given is left blank. */
export type RecordOf<T> = Readonly<Partial<Record<KeyOf<T>, Cell | undefined>>>;

/** A record that says of every column what stands there. */
export type WholeRecordOf<T> = Readonly<Record<KeyOf<T>, Cell | undefined>>;

/** Defines a table once: its columns by key, in the order in which they are to stand. */
export function defineTable<K extends string>(
  name: string,
  room: number,
  columns: Readonly<Record<K, Column<NoInfer<K>>>>,
): Table<K> {
  const keys = Object.keys(columns) as K[];
  const headings = keys.map((key) => columns[key].heading);
  const fromTo = `[${headings[0]}]:[${headings.at(-1)}]`;
  return {
    name,
    room,
    columns,
    keys,
    headings,
    headingCells: `${name}[[#Headers],${fromTo}]`,
    records: `${name}[${fromTo}]`,
    of: (key) => `${name}[${columns[key].heading}]`,
    placeOf: (key) => keys.indexOf(key),
  };
}

/** A record as cells in the order of the columns. */
export const cellsOf = <K extends string>(
  { keys }: Table<K>,
  record: Readonly<Partial<Record<K, Cell | undefined>>>,
): readonly Cell[] => keys.map((key) => record[key] ?? null);
