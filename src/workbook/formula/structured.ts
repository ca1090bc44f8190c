import { type Area, areaText, isInside, type Place } from "../address.ts";
import type { Table } from "../model.ts";

export interface TableOnSheet {
  readonly table: Table;
  readonly sheet: number;
}

interface Wanted {
  readonly parts: ReadonlySet<string>;
  readonly from: string | undefined;
  readonly to: string | undefined;
}

/**
 * The cells that a structured reference stands for.
 *
 * @param inner - the bracket behind the table's name, e.g. `[[#This Row],[Lame]]`; empty for the table alone
 * @param at - the cell the formula stands in, for "this row"
 * @returns the cells, or undefined when there is no such column, row or part: `#REF!`
 */
export function structuredArea(table: Table, inner: string, at: Place): Area | undefined {
  const wanted = readBracket(inner);
  if (!wanted) return undefined;
  const columns = columnsOf(table, wanted);
  const rows = rowsOf(table, wanted.parts, at);
  return columns && rows ? { ...columns, ...rows } : undefined;
}

/** @example quoteSheet("Sale check") // → "'Sale check'!" */
export const quoteSheet = (name: string): string => `'${name.replaceAll("'", "''")}'!`;

/** A sheet's name as it stands before the `!`. @example unquoteSheet("'Sale check'") // → "Sale check" */
export const unquoteSheet = (written: string): string =>
  written.startsWith("'") ? written.slice(1, -1).replaceAll("''", "'") : written;

/** The table whose cells hold this place, for references that leave out its name. */
export const tableAround = (tables: readonly Table[], at: Place): Table | undefined =>
  tables.find(({ area }) => isInside(at, area));

export const fixedArea = ({ top, left, bottom, right }: Area): string =>
  areaText({ top, left, bottom, right }).replace(/([A-Z]+)([0-9]+)/g, "$$$1$$$2");

function columnsOf({ area, columns }: Table, { from, to }: Wanted): Pick<Area, "left" | "right"> | undefined {
  if (from === undefined) return { left: area.left, right: area.right };
  const first = placeOf(columns, from);
  const last = to === undefined ? first : placeOf(columns, to);
  if (first === -1 || last === -1) return undefined;
  return { left: area.left + Math.min(first, last), right: area.left + Math.max(first, last) };
}

const placeOf = (columns: readonly string[], name: string): number => {
  const wanted = name.toLowerCase();
  return columns.findIndex((column) => column.toLowerCase() === wanted);
};

function rowsOf(table: Table, parts: ReadonlySet<string>, at: Place): Pick<Area, "top" | "bottom"> | undefined {
  const { area, headerRows, totalsRows } = table;
  const data = { top: area.top + headerRows, bottom: area.bottom - totalsRows };
  if (parts.has("#this row")) {
    return at.row >= data.top && at.row <= data.bottom ? { top: at.row, bottom: at.row } : undefined;
  }
  const ranges = [
    ...(parts.has("#all") ? [{ top: area.top, bottom: area.bottom }] : []),
    ...(parts.has("#headers") ? (headerRows ? [{ top: area.top, bottom: area.top }] : [undefined]) : []),
    ...(parts.has("#data") || parts.size === 0 ? [data] : []),
    ...(parts.has("#totals") ? (totalsRows ? [{ top: area.bottom, bottom: area.bottom }] : [undefined]) : []),
  ];
  let [all] = ranges;
  for (const range of ranges) {
    if (!range || !all) return undefined;
    all = { top: Math.min(all.top, range.top), bottom: Math.max(all.bottom, range.bottom) };
  }
  return all;
}

const special = /^#(?:all|headers|data|totals|this row)$/i;

function readBracket(bracket: string): Wanted | undefined {
  const parts = new Set<string>();
  const columns: string[] = [];
  if (bracket === "" || bracket === "[]") return { parts, from: undefined, to: undefined };
  let inside = bracket.slice(1, -1).trim();
  if (inside.startsWith("@")) {
    parts.add("#this row");
    inside = inside.slice(1);
  }
  for (const item of itemsOf(inside)) {
    if (special.test(item)) parts.add(item.toLowerCase());
    else if (item !== "") columns.push(item.replace(/'(.)/g, "$1"));
  }
  if (columns.length > 2) return undefined;
  return { parts, from: columns[0], to: columns[1] };
}

// `Lame` stands alone; `[#All],[Lame]:[Seen]` lists pieces in brackets of their own.
function itemsOf(inside: string): readonly string[] {
  if (!inside.startsWith("[")) return [inside];
  const items: string[] = [];
  let from = -1;
  for (let at = 0; at < inside.length; at += 1) {
    if (inside[at] === "'") at += 1;
    else if (inside[at] === "[") from = at + 1;
    else if (inside[at] === "]") items.push(inside.slice(from, at));
  }
  return items;
}
