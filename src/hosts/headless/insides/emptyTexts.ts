import type { ICellData } from "@univerjs/core";

// The engine takes a cell whose text is empty for a blank one, unless it holds rich text, and this is the emptiest.
const nothingRich = { body: { dataStream: "" } } as NonNullable<ICellData["p"]>;

/**
 * A cell for the engine in which an empty text is a text: unlike a blank it is not 0, and COUNTA counts it.
 *
 * @returns the same cell, marked where its text is empty
 */
export const withEmptyText = (cell: ICellData): ICellData =>
  cell.v === "" && cell.t === 1 ? { ...cell, p: nothingRich } : cell;

/** The same for what formulas give. This wraps a private method: look at it again when the engine's version changes. */
export function keepEmptyTexts(runtime: object): void {
  const store = runtime as { _getValueObjectOfRuntimeData: (answer: unknown) => ICellData };
  const cellOf = store._getValueObjectOfRuntimeData.bind(runtime);
  store._getValueObjectOfRuntimeData = (answer) => withEmptyText(cellOf(answer));
}
