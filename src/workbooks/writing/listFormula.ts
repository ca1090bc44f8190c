import type { Area, Place } from "../../workbook/address.ts";
import type { Edition } from "./edition.ts";
import { fixedArea } from "./references.ts";

/** A list that a formula gives. */
export interface List {
  /** The formula that gives it, without `=`. */
  readonly list: string;
  /** How many cells it may fill, from the one it stands in on. */
  readonly room: { readonly rows: number; readonly columns: number };
  /** When there is no list, and what is said in its place; may be a formula itself. */
  readonly unless?: readonly [when: string, say: string];
  /** Whether its last row may turn out too early: it then says how many more there are. */
  readonly mayBeLonger?: boolean;
}

interface Written {
  readonly at: Place;
  readonly formula: string;
  readonly array?: Area;
}

/**
 * The formulas of a list: one that grows, or for LibreOffice one over all its room, blank where nothing stands, and one
 * below that says how many lines more there are.
 */
export function listFormulas(edition: Edition, at: Place, content: List): readonly Written[] {
  const { list, room, unless, mayBeLonger = false } = content;
  const or = (said: string, formula: string): string => (unless ? `IF(${unless[0]},${said},${formula})` : formula);
  if (edition === "excel") return [{ at, formula: or(unless?.[1] ?? "", list) }];
  const rows = mayBeLonger ? room.rows - 1 : room.rows;
  const array = { top: at.row, left: at.column, bottom: at.row + rows - 1, right: at.column + room.columns - 1 };
  const [row, column] = [`ROW(${fixedArea(array)})-${at.row}`, `COLUMN(${fixedArea(array)})-${at.column}`];
  // Beyond its end a list would fill the room with errors, and a single answer with itself.
  const whole = `IF((${row}<=ROWS(${list}))*(${column}<=COLUMNS(${list})),${list},"")`;
  const said = `IF((${row}=1)*(${column}=1),${unless?.[1]},"")`;
  const written: Written = { at, formula: or(said, whole), array };
  if (!mayBeLonger) return [written];
  const more = `IF(ROWS(${list})>${rows},"and "&ROWS(${list})-${rows}&" more","")`;
  return [written, { at: { ...at, row: array.bottom + 1 }, formula: or('""', more), array: oneCellOf(at, array) }];
}

const oneCellOf = ({ column }: Place, { bottom }: Area): Area => ({
  top: bottom + 1,
  left: column,
  bottom: bottom + 1,
  right: column,
});
