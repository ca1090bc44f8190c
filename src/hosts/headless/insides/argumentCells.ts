import type { ICellData, Nullable } from "@univerjs/core";
import type {
  ArrayValueObject,
  BaseReferenceObject,
  BaseValueObject,
  FunctionVariantType,
} from "@univerjs/engine-formula";
import type { Cell, Cells } from "../../../cells/cell.ts";
import type { Argument } from "../../../reading/readArguments.ts";
import { cellFromData, errorCode } from "../valueCells.ts";

/** What the engine hands over for one argument, as cells. Blanks stay blank; an argument left out between commas is null, as it is in Excel. */
export function argumentCells(given: FunctionVariantType): Argument {
  if (given.isReferenceObject()) return referenceCells(given as BaseReferenceObject);
  const value = given as BaseValueObject;
  if (value.isArray()) return arrayCells(value as ArrayValueObject);
  return cellOf(value);
}

function cellOf(value: Nullable<BaseValueObject>): Cell {
  if (!value || value.isNull()) return null;
  const content = value.getValue();
  return value.isError() ? { error: errorCode(String(content)) } : content;
}

const arrayCells = (array: ArrayValueObject): Cells =>
  array.getArrayValue().map((row) => row.map((cell) => cellOf(cell)));

/**
 * The cells of a range; of a tall one down to the last row that holds anything, so that a whole column costs no more
 * than its records. They are read from the engine's own stores: its reader of single cells makes two objects for each.
 */
function referenceCells(reference: BaseReferenceObject): Cells {
  const { startRow, endRow, startColumn, endColumn } = reference.getRangePosition();
  // What was worked out in this run goes before what formulas filled earlier, and that before what the sheet holds.
  const stores = [
    reference.getCurrentRuntimeSheetData(),
    reference.getCurrentRuntimeActiveArrayFormulaCellData(),
    reference.getCurrentActiveArrayFormulaCellData(),
    reference.getCurrentActiveSheetData()?.cellData,
  ].filter((store) => store !== undefined);
  const isTall = endRow - startRow > tall;
  const last = isTall ? Math.min(endRow, Math.max(startRow, ...stores.map((store) => store.getLength() - 1))) : endRow;
  const cells: Cell[][] = [];
  for (let row = startRow; row <= last; row += 1) {
    const line: Cell[] = [];
    for (let column = startColumn; column <= endColumn; column += 1) {
      let data: Nullable<ICellData>;
      for (const store of stores) {
        data = store.getValue(row, column);
        if (data) break;
      }
      line.push(cellFromData(data));
    }
    cells.push(line);
  }
  return cells;
}

// The engine finds a sheet's last row by going through its rows, which is not worth it for a few.
const tall = 1000;
