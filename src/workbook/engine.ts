import type { Cell } from "../cells/cell.ts";
import type { Format } from "../writing/format.ts";
import type { Area, Place } from "./address.ts";
import type { FormulaTree } from "./formula/formulaTree.ts";

/**
 * A cell as the engine gets it. A formula is in the engine's spelling and starts with `=`, or is a tree where it has been
 * read for this sheet.
 */
export interface EngineCell extends Place {
  /** Its content; of a formula what was saved for it, null when nothing was. */
  readonly value: Cell;
  readonly formula?: string | FormulaTree;
  /** A formula for one cell: of a range it means the cell in its own row or column. */
  readonly single?: boolean;
  /** An array formula of the old kind: the cells it was entered in. */
  readonly fixed?: Area | undefined;
}

export interface EngineSheet {
  readonly name: string;
  readonly cells: readonly EngineCell[];
  /** Cells that a formula filled when the file was saved, with the `placeKey` of that formula. */
  readonly filled?: readonly (EngineCell & { readonly by: number })[];
  /** Cells that no answer may fill. */
  readonly reserved?: readonly Area[];
  /** Rows out of sight, and of these the ones a filter took out. */
  readonly hidden?: ReadonlySet<number>;
  readonly filtered?: ReadonlySet<number>;
  /** Cells whose formula is a subtotal, by `placeKey`. */
  readonly subtotals?: ReadonlySet<number>;
}

export interface EngineWorkbook {
  readonly sheets: readonly EngineSheet[];
  readonly dateSystem: 1900 | 1904;
  /** Names for the functions that look one up by its text, such as INDIRECT. */
  readonly names: readonly { readonly name: string; readonly formula: string }[];
}

export interface EngineAnswer {
  readonly value: Cell;
  /** Set when the answer takes more than one cell. */
  readonly spill?: { readonly area: Area; readonly cells: readonly (readonly Cell[])[] };
  /** Why it keeps its saved value. */
  readonly left?: string;
  /** What a FOOT function called in this cell said when it refused. */
  readonly message?: string;
  /** How the last FOOT function called in this cell wants its columns shown. */
  readonly shown?: { readonly formats: readonly Format[]; readonly headings: boolean };
}

/** Answers by sheet, in the order given; by `placeKey` of the formula cell. */
export interface EngineAnswers {
  readonly sheets: readonly ReadonlyMap<number, EngineAnswer>[];
  readonly circular: boolean;
}

export interface Engine {
  /** The functions it can work out, in capitals. */
  readonly knows: (functionName: string) => boolean;
  /** The FOOT functions, without namespace. */
  readonly footNames: readonly string[];
  readonly calculate: (workbook: EngineWorkbook) => Promise<EngineAnswers>;
}

/** A cell's place as one number, the key of maps. */
export const placeKey = (row: number, column: number): number => row * 16_384 + column;
