import type { Cell, CellError, ErrorCode } from "../../../cells/cell.ts";
import type { FormulaNode } from "../../../workbook/formula/parseFormula.ts";
import type { SheetArea } from "../../../workbook/formula/referencesIn.ts";

/** Cells named by their places. */
export interface Reference {
  readonly areas: readonly SheetArea[];
}

/** Cells worked out. */
export interface Grid {
  readonly grid: readonly (readonly Cell[])[];
}

/** A function made in a formula. */
export interface Lambda {
  readonly parameters: readonly string[];
  readonly body: FormulaNode;
  readonly scope: Scope;
}

/** What names stand for inside LET and LAMBDA. */
export type Scope = ReadonlyMap<string, Value>;

export type Value = Cell | Reference | Grid | Lambda;

export const isReference = (value: Value | undefined): value is Reference =>
  typeof value === "object" && value !== null && "areas" in value;
export const isGrid = (value: Value | undefined): value is Grid =>
  typeof value === "object" && value !== null && "grid" in value;
export const isLambda = (value: Value | undefined): value is Lambda =>
  typeof value === "object" && value !== null && "body" in value;

export const errorOf = (code: ErrorCode): CellError => ({ error: code });

/** An array of one cell is that cell. */
export function gridOr(grid: readonly (readonly Cell[])[]): Grid | Cell {
  if (grid.length === 1 && grid[0]?.length === 1) return grid[0][0] ?? null;
  return grid.length === 0 || grid[0]?.length === 0 ? errorOf("#CALC!") : { grid };
}

/**
 * What a function of single cells gives for arrays: a single row, column or cell repeats, and where one is too short
 * stands #N/A.
 */
export function lift(given: readonly (Cell | Grid)[], each: (...cells: Cell[]) => Cell): Cell | Grid {
  if (!given.some(isGrid)) return each(...(given as Cell[]));
  const grids = given.map((value) => (isGrid(value) ? value.grid : [[value as Cell]]));
  const rows = Math.max(...grids.map(({ length }) => length));
  const columns = Math.max(...grids.map((grid) => grid[0]?.length ?? 0));
  const out: Cell[][] = [];
  // Filled anew for each cell: an array for each would be as many as there are cells.
  const cells: Cell[] = [];
  for (let row = 0; row < rows; row += 1) {
    const lines = grids.map((grid) => grid[grid.length === 1 ? 0 : row] ?? noCells);
    const line: Cell[] = [];
    for (let column = 0; column < columns; column += 1) {
      let missing = false;
      for (let one = 0; one < lines.length; one += 1) {
        const from = lines[one] as readonly Cell[];
        const index = from.length === 1 ? 0 : column;
        missing ||= index >= from.length;
        cells[one] = from[index] ?? null;
      }
      line.push(missing ? errorOf("#N/A") : each(...cells));
    }
    out.push(line);
  }
  return gridOr(out);
}

const noCells: readonly Cell[] = [];
