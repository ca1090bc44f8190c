import type { Cell } from "../cells/cell.ts";
import type { Area, Place } from "./address.ts";

/** A formula as a sheet part holds it. */
export interface StoredFormula {
  /** Without `=`, in the file's spelling; a follower of a shared formula has its own text worked out. */
  readonly text: string;
  readonly kind: "plain" | "shared" | "array" | "data table";
  /** The cells an array formula fills. */
  readonly area?: Area;
  /** Where the shared formula that it is or follows stands in the sheet part. */
  readonly leader?: number;
  /** Places of the `<f>` element in the sheet part. */
  readonly start: number;
  readonly end: number;
}

/** A cell as a sheet part holds it. */
export interface SheetCell extends Place {
  readonly value: Cell;
  readonly style: number;
  readonly formula?: StoredFormula;
  /** It carries the mark of a dynamic array formula. */
  readonly dynamic: boolean;
  /** A formula for which no value was saved. */
  readonly unsaved?: true;
  /** Its element does not say where it stands: it follows the one before. */
  readonly implied?: true;
  /** Content this program does not know, carried along. */
  readonly extra?: string;
  /** Places of the `<c>` element in the sheet part. */
  readonly start: number;
  readonly end: number;
}

export interface SheetRow {
  readonly row: number;
  /** The style for cells that are not there yet, if the row has one. */
  readonly style: number | undefined;
  readonly implied?: true;
  /** Out of sight. */
  readonly hidden?: true;
  readonly start: number;
  /** Just after the opening tag. */
  readonly inner: number;
  /** Just before the closing tag; the same as `end` for `<row/>`. */
  readonly close: number;
  readonly end: number;
  readonly cells: readonly SheetCell[];
}

export interface Sheet {
  readonly name: string;
  /** The part's name in the file. */
  readonly part: string;
  readonly text: string;
  /** `x:` where the part writes its elements with a prefix. */
  readonly prefix: string;
  readonly rows: readonly SheetRow[];
  /** Where `<sheetData>` opens and closes. */
  readonly data: { readonly start: number; readonly inner: number; readonly close: number; readonly end: number };
  readonly columnStyles: readonly { readonly from: number; readonly to: number; readonly style: number }[];
  readonly merged: readonly Area[];
  /** Where a filter takes rows out of sight; the first row of each is its headings. */
  readonly filters: readonly Area[];
  readonly tables: readonly Table[];
}

export interface Table {
  readonly name: string;
  readonly area: Area;
  readonly columns: readonly string[];
  readonly headerRows: number;
  readonly totalsRows: number;
  /** Its filter takes rows out of sight. */
  readonly filtered?: true;
}

export interface DefinedName {
  readonly name: string;
  readonly text: string;
  /** The sheet it belongs to, by place; undefined when it belongs to the whole workbook. */
  readonly sheet: number | undefined;
}
