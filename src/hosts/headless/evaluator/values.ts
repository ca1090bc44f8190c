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

/** The first cell of an array: what is taken of one where a single cell is meant. */
export const firstOf = (content: Cell | Grid): Cell => (isGrid(content) ? (content.grid[0]?.[0] ?? null) : content);

/** What stands for the cells of an area among other texts. */
export const nameOf = ({ sheet, area: { top, left, bottom, right } }: SheetArea): string =>
  `${sheet} ${top} ${left} ${bottom} ${right}`;

/** A place in a line of an array, where a single cell repeats and what is too short ends in #N/A. */
export function cellIn(line: readonly Cell[], column: number): Cell {
  const index = line.length === 1 ? 0 : column;
  return index < line.length ? (line[index] ?? null) : notThere;
}

/**
 * Makes the lines of an array out of those of others; a single line repeats. Where they are the very lines that the line
 * above was made of, it is the line above: the blank rows of a book's room are as good as free.
 */
export function linesFrom(
  grids: readonly (readonly (readonly Cell[])[])[],
  make: (lines: readonly (readonly Cell[])[]) => readonly Cell[],
): readonly (readonly Cell[])[] {
  const rows = Math.max(...grids.map(({ length }) => length));
  const out = new Array<readonly Cell[]>(rows);
  const lines = new Array<readonly Cell[]>(grids.length).fill(noCells);
  for (let row = 0; row < rows; row += 1) {
    let isAbove = row > 0;
    for (let one = 0; one < grids.length; one += 1) {
      const grid = grids[one] as readonly (readonly Cell[])[];
      const line = grid[grid.length === 1 ? 0 : row] ?? noCells;
      if (line !== lines[one]) isAbove = false;
      lines[one] = line;
    }
    out[row] = isAbove ? (out[row - 1] as readonly Cell[]) : make(lines);
  }
  return out;
}

/**
 * What a function of single cells gives for arrays: a single row, column or cell repeats, and where one is too short
 * stands #N/A. The same cells must give the same answer: it is not asked for again.
 */
export function lift(given: readonly (Cell | Grid)[], each: (...cells: Cell[]) => Cell): Cell | Grid {
  if (!given.some(isGrid)) return each(...(given as Cell[]));
  const grids = gridsOf(given);
  const columns = widest(grids);
  // Filled anew for each cell: an array for each would be as many as there are cells.
  const cells: Cell[] = [];
  return gridOr(
    linesFrom(grids, (lines) => {
      const out = new Array<Cell>(columns);
      for (let column = 0; column < columns; column += 1) {
        let missing = false;
        for (let one = 0; one < lines.length; one += 1) {
          const from = lines[one] as readonly Cell[];
          const index = from.length === 1 ? 0 : column;
          missing ||= index >= from.length;
          cells[one] = from[index] ?? null;
        }
        out[column] = missing ? notThere : each(...cells);
      }
      return out;
    }),
  );
}

/** The same for a function that may give another answer for the same cells. */
export function liftAnew(given: readonly (Cell | Grid)[], each: (...cells: Cell[]) => Cell): Cell | Grid {
  if (!given.some(isGrid)) return each(...(given as Cell[]));
  const grids = gridsOf(given);
  const columns = Array.from({ length: widest(grids) }, (_, column) => column);
  const rows = Array.from({ length: Math.max(...grids.map(({ length }) => length)) }, (_, row) => row);
  return gridOr(
    rows.map((row) =>
      columns.map((column) => {
        const lines = grids.map((grid) => grid[grid.length === 1 ? 0 : row] ?? noCells);
        const isMissing = lines.some(({ length }) => length !== 1 && column >= length);
        return isMissing ? notThere : each(...lines.map((line) => cellIn(line, column)));
      }),
    ),
  );
}

const gridsOf = (given: readonly (Cell | Grid)[]) => given.map((value) => (isGrid(value) ? value.grid : [[value]]));
const widest = (grids: readonly (readonly (readonly Cell[])[])[]): number =>
  Math.max(...grids.map((grid) => grid[0]?.length ?? 0));

const notThere = errorOf("#N/A");
const noCells: readonly Cell[] = [];
