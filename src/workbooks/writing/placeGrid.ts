import type { Area, Place } from "../../workbook/address.ts";
import { isCentred, type Look } from "./looks.ts";
import { cellOn, cellsOn, fixedCell, rowCell } from "./references.ts";
import type { Content, SheetAuthor } from "./sheetAuthor.ts";

/** A row of a grid while it is written. */
export interface GridRow<K extends string> {
  /** Counted from 0. */
  readonly place: number;
  /** The cell of a column in this row, with a row that moves. */
  readonly cell: (key: K) => string;
  /** The cells of a column from the first row to this one, the first fixed. */
  readonly soFar: (key: K) => string;
  /** Those above this row; undefined in the first. */
  readonly before: (key: K) => string | undefined;
}

/** What stands in a row of a column. */
export type Holds<K extends string> = (row: GridRow<K>) => Content;

export interface GridColumn<K extends string> {
  readonly heading: string;
  readonly width?: number;
  readonly look: Look;
  /** What stands in each row; left out where what stands beside it fills it too. */
  readonly holds?: Holds<K>;
}

/** A column of formulas. */
export const formulas = <K extends string>(
  heading: string,
  look: Look,
  formula: (row: GridRow<K>) => string,
): GridColumn<K> => ({ heading, look, holds: (row) => ({ formula: formula(row) }) });

/** Cells that are worked out row by row under headings. */
export interface PlacedGrid<K extends string> {
  readonly area: Area;
  readonly rows: Area;
  readonly column: (key: K, to?: K) => Area;
  /** A cell of the first row, with a row that moves. */
  readonly cell: (key: K) => string;
  /** The place of a cell. */
  readonly at: (key: K, index: number) => Place;
  /** As formulas of every sheet name them. */
  readonly range: (key: K) => string;
  readonly heading: (key: K) => string;
}

/**
 * Where a grid stands; other sheets can name its cells before it is written.
 *
 * @param at - of the first heading
 */
export function placeGrid<K extends string>(sheet: string, keys: readonly K[], at: Place, rows: number): PlacedGrid<K> {
  const area = { top: at.row, left: at.column, bottom: at.row + rows, right: at.column + keys.length - 1 };
  const columnOf = (key: K): number => at.column + keys.indexOf(key);
  const column = (key: K, to = key): Area => ({
    top: area.top + 1,
    left: columnOf(key),
    bottom: area.bottom,
    right: columnOf(to),
  });
  return {
    area,
    rows: { ...area, top: area.top + 1 },
    column,
    cell: (key) => rowCell({ row: at.row + 1, column: columnOf(key) }),
    at: (key, index) => ({ row: at.row + 1 + index, column: columnOf(key) }),
    range: (key) => cellsOn(sheet, column(key)),
    heading: (key) => cellOn(sheet, { row: at.row, column: columnOf(key) }),
  };
}

/**
 * Writes a grid where it was placed.
 *
 * @param dressed - whether each cell is dressed; else whole columns are, see `columnLook`
 */
export function writeGrid<K extends string>(
  sheet: SheetAuthor,
  placed: PlacedGrid<K>,
  columns: Readonly<Record<K, GridColumn<K>>>,
  { dressed = true }: { readonly dressed?: boolean } = {},
): void {
  const keys = Object.keys(columns) as K[];
  for (const key of keys) {
    const { heading, width, look, holds } = columns[key];
    const { top, left, bottom } = placed.column(key);
    sheet.put({ row: top - 1, column: left }, heading, isCentred(look) ? "workedHeadingCentre" : "workedHeading");
    if (width !== undefined) sheet.width(left, width);
    if (dressed) sheet.dress(placed.column(key), look);
    for (let row = top; holds && row <= bottom; row++) {
      const upTo = (of: K, last: number): string => {
        const { left: column } = placed.column(of);
        return `${fixedCell({ row: top, column })}:${rowCell({ row: last, column })}`;
      };
      const content = holds({
        place: row - top,
        cell: (of) => rowCell({ row, column: placed.column(of).left }),
        soFar: (of) => upTo(of, row),
        before: (of) => (row === top ? undefined : upTo(of, row - 1)),
      });
      sheet.put({ row, column: left }, content);
    }
  }
}
