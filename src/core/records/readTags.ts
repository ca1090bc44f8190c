import type { Cell, Cells } from "../../cells/cell.ts";
import { isBlankCell } from "../../cells/cell.ts";
import type { Fault } from "../../cells/fault.ts";
import { noAnimal } from "../words/orderByAnimal.ts";
import { readTag } from "../words/tagFault.ts";
import type { FieldColumn } from "./readField.ts";

/** A column of tags as read, with the animals numbered. */
export interface TagColumn extends FieldColumn {
  /** The animal of each row, from 0 in order of first appearance; `noAnimal` where there is none, or it cannot be read. */
  readonly animals: Int32Array;
  /** The first row of each animal. */
  readonly firstRows: readonly number[];
  /** The rows in which a tag is spelt as in no row before. */
  readonly newSpellings: readonly number[];
}

interface Spelling {
  readonly key: string | undefined;
  readonly fault: Fault | undefined;
  readonly animal: number;
}

const blank: Spelling = { key: undefined, fault: undefined, animal: noAnimal };

/** @param place - 0-based column among the cells */
export function readTags(rows: Cells, place: number): TagColumn {
  const known = new Map<Cell, Spelling>();
  const byKey = new Map<string, number>();
  const values = new Array<string | undefined>(rows.length);
  const faults = new Map<number, Fault>();
  const animals = new Int32Array(rows.length);
  const firstRows: number[] = [];
  const newSpellings: number[] = [];
  for (let row = 0; row < rows.length; row++) {
    const cell = rows[row]?.[place] ?? null;
    let spelling = known.get(cell);
    if (spelling === undefined) {
      spelling = spellingOf(cell, byKey);
      if (spelling.animal === firstRows.length) firstRows.push(row);
      known.set(cell, spelling);
      newSpellings.push(row);
    }
    values[row] = spelling.key;
    animals[row] = spelling.animal;
    if (spelling.fault !== undefined) faults.set(row, spelling.fault);
  }
  return { values, faults, animals, firstRows, newSpellings };
}

function spellingOf(cell: Cell, byKey: Map<string, number>): Spelling {
  // Some spreadsheets hand over a blank cell as 0, and no tag is 0.
  if (cell === 0 || isBlankCell(cell)) return blank;
  const key = readTag(cell);
  if (typeof key !== "string") return { key: undefined, fault: key, animal: noAnimal };
  const met = byKey.get(key);
  if (met === undefined) byKey.set(key, byKey.size);
  return { key, fault: undefined, animal: met ?? byKey.size - 1 };
}
