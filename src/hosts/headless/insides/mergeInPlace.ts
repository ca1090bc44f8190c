import type { ICellData, IRange, Nullable } from "@univerjs/core";
import type { FormulaDataModel } from "@univerjs/engine-formula";

type Rows<T> = Record<number, Nullable<Record<number, Nullable<T>>>>;
type BySheet<T> = Record<string, Nullable<Record<string, Nullable<Rows<T>>>>>;

/**
 * Puts what formulas fill in its place among what others fill. The engine's own then copies all that formulas fill on the
 * sheet, by way of a text: a quarter of a second for twenty columns of 5,000 rows, in which the page stands still.
 */
export function mergeInPlace(model: FormulaDataModel): void {
  model.mergeArrayFormulaCellData = (given) => {
    const areas = model.getArrayFormulaRange() as BySheet<IRange>;
    const cells = model.getArrayFormulaCellData() as BySheet<ICellData>;
    for (const [unit, sheets] of Object.entries(given)) {
      if (!sheets) continue;
      const ofUnit = cells[unit] ?? {};
      cells[unit] = ofUnit;
      for (const [sheet, fresh] of Object.entries(sheets)) {
        const kept: Rows<ICellData> = ofUnit[sheet] ?? {};
        ofUnit[sheet] = kept;
        fresh?.forValue((row, column) => {
          const area = areas[unit]?.[sheet]?.[row]?.[column];
          if (area) empty(kept, area);
        });
        fresh?.forValue((row, column, cell) => {
          if (!cell) return empty(kept, { startRow: row, endRow: row, startColumn: column, endColumn: column });
          const line = kept[row] ?? {};
          kept[row] = line;
          line[column] = { ...cell };
        });
      }
    }
  };
}

function empty(rows: Rows<ICellData>, { startRow, endRow, startColumn, endColumn }: IRange): void {
  for (let row = startRow; row <= endRow; row += 1) {
    const line = rows[row];
    if (!line) continue;
    for (let column = startColumn; column <= endColumn; column += 1) delete line[column];
    if (Object.keys(line).length === 0) delete rows[row];
  }
}
