import type { IRange, Nullable } from "@univerjs/core";

/** The cells that formulas fill, by row and column of the formula, as the engine keeps them. */
export type FilledAreas = Readonly<Record<number, Nullable<Readonly<Record<number, Nullable<IRange>>>>>>;

export const isInArea = ({ startRow, endRow, startColumn, endColumn }: IRange, row: number, column: number): boolean =>
  row >= startRow && row <= endRow && column >= startColumn && column <= endColumn;
