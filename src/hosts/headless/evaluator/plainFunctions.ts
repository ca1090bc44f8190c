import { type Cell, isCellError } from "../../../cells/cell.ts";
import { NotWorkedOut } from "../../../workbook/formula/notWorkedOut.ts";
import type { Calling, WorksheetFunction } from "./evaluateFormula.ts";
import { truthOf } from "./forms.ts";
import { textOf } from "./operators.ts";
import { errorOf, firstOf, type Grid, gridOr, isGrid, isReference, lift, type Value } from "./values.ts";

/** A function of single cells, which an array gives an array of. */
const ofCells =
  (each: (cells: readonly Cell[], calling: Calling) => Cell, errorsToo = false): WorksheetFunction =>
  (given, calling) =>
    lift(
      given.map((value) => calling.content(value)),
      (...cells) => (errorsToo ? undefined : cells.find(isCellError)) ?? each(cells, calling),
    );

const hyperlink: WorksheetFunction = ([address, shown], calling) =>
  shown === undefined ? calling.content(address) : calling.content(shown);

/** AND and its kin: texts and blanks of a range are passed over. */
const truths =
  (make: (truths: readonly boolean[]) => boolean): WorksheetFunction =>
  (given, calling) => {
    const found: boolean[] = [];
    for (const value of given) {
      const isRange = isReference(value);
      const contents = isRange
        ? value.areas.flatMap((area) => calling.store.cells({ ...area, area: calling.store.filledPart(area) }))
        : cellsOf(calling.content(value));
      for (const cell of contents.flat()) {
        if (isCellError(cell)) return cell;
        if ((isRange || contents.length > 1) && (cell === null || typeof cell === "string")) continue;
        const truth = truthOf(cell);
        if (typeof truth !== "boolean") return truth;
        found.push(truth);
      }
    }
    return found.length === 0 ? errorOf("#VALUE!") : make(found);
  };

const cellsOf = (content: Cell | Grid): readonly (readonly Cell[])[] => (isGrid(content) ? content.grid : [[content]]);

const sumProduct: WorksheetFunction = (given, calling) => {
  const grids = given.map((value) =>
    isReference(value) && value.areas[0] ? calling.store.arrayCells(value.areas[0]) : cellsOf(calling.content(value)),
  );
  const [first] = grids;
  if (!first) return errorOf("#VALUE!");
  if (grids.some((grid) => grid.length !== first.length || grid[0]?.length !== first[0]?.length))
    return errorOf("#VALUE!");
  let sum = 0;
  for (const [row, line] of first.entries()) {
    for (let column = 0; column < line.length; column += 1) {
      let product = 1;
      for (const grid of grids) {
        const cell = grid[row]?.[column] ?? null;
        if (isCellError(cell)) return cell;
        product *= typeof cell === "number" ? cell : 0;
      }
      sum += product;
    }
  }
  return Number.isFinite(sum) ? sum : errorOf("#NUM!");
};

function concat(given: readonly (Value | undefined)[], calling: Calling): Value {
  // Joined at the end: a text that grows by pieces keeps each of them in memory.
  const pieces: string[] = [];
  let length = 0;
  for (const value of given) {
    const cells = isReference(value)
      ? value.areas.flatMap((area) => calling.store.cells({ ...area, area: calling.store.filledPart(area) }))
      : cellsOf(calling.content(value));
    const flat = cells.flat();
    // A cell turned into text and joined takes many times as long as one that is read, and its text stays.
    calling.store.spend(20 * flat.length);
    for (const cell of flat) {
      if (isCellError(cell)) return cell;
      const piece = textOf(cell);
      pieces.push(piece);
      length += piece.length;
      if (length > 32_767) return errorOf("#VALUE!");
    }
  }
  return pieces.join("");
}

const typeOf = (content: Cell | Grid): number => {
  if (isGrid(content)) return 64;
  if (typeof content === "string") return 2;
  if (typeof content === "boolean") return 4;
  return isCellError(content) ? 16 : 1;
};

/** Functions that the library of the embedded spreadsheet gets wrong, or takes too long for. */
export const plainFunctions: ReadonlyMap<string, WorksheetFunction> = new Map<string, WorksheetFunction>([
  ["HYPERLINK", hyperlink],
  ["AND", truths((found) => found.every(Boolean))],
  ["OR", truths((found) => found.some(Boolean))],
  ["XOR", truths((found) => found.filter(Boolean).length % 2 === 1)],
  ["NOT", ofCells(([cell = null]) => negated(cell))],
  ["SUMPRODUCT", sumProduct],
  ["CONCAT", concat],
  ["ISBLANK", ofCells(([cell = null]) => cell === null, true)],
  ["ISNUMBER", ofCells(([cell = null]) => typeof cell === "number", true)],
  ["ISTEXT", ofCells(([cell = null]) => typeof cell === "string", true)],
  ["ISNONTEXT", ofCells(([cell = null]) => typeof cell !== "string", true)],
  ["ISLOGICAL", ofCells(([cell = null]) => typeof cell === "boolean", true)],
  ["ISERROR", ofCells(([cell = null]) => isCellError(cell), true)],
  ["ISERR", ofCells(([cell = null]) => isCellError(cell) && cell.error !== "#N/A", true)],
  ["ISNA", ofCells(([cell = null]) => isCellError(cell) && cell.error === "#N/A", true)],
  ["N", ([value], calling) => asNumber(firstOf(calling.content(value)))],
  ["T", ([value], calling) => asText(firstOf(calling.content(value)))],
  ["TYPE", ([value], calling) => typeOf(calling.content(value))],
  ["TRANSPOSE", ([value], calling) => transpose(value, calling)],
]);

const negated = (cell: Cell): Cell => {
  const truth = truthOf(cell);
  return typeof truth === "boolean" ? !truth : truth;
};
const asNumber = (cell: Cell): Cell =>
  isCellError(cell) || typeof cell === "number" ? cell : typeof cell === "boolean" ? Number(cell) : 0;
const asText = (cell: Cell): Cell => (isCellError(cell) || typeof cell === "string" ? cell : "");

function transpose(value: Value | undefined, calling: Calling): Value {
  if (!calling.arrays) throw new NotWorkedOut("what TRANSPOSE gives in a formula for one cell is not certain");
  const grid =
    isReference(value) && value.areas[0] ? calling.store.arrayCells(value.areas[0]) : cellsOf(calling.content(value));
  return gridOr((grid[0] ?? []).map((_, column) => grid.map((line) => line[column] ?? null)));
}
