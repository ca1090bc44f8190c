import type { Cell } from "../../cells/cell.ts";
import { isBlankCell } from "../../cells/cell.ts";
import type { Fault } from "../../cells/fault.ts";
import { noAnimal } from "../words/orderByAnimal.ts";
import { readTag } from "../words/tagFault.ts";
import type { ColumnInSteps, FieldColumn } from "./readField.ts";

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
export function readTags(place: number, height: number): ColumnInSteps<TagColumn> {
  const known = new Map<Cell, Spelling>();
  const byKey = new Map<string, number>();
  const values = new Array<string | undefined>(height);
  const faults = new Map<number, Fault>();
  const animals = new Int32Array(height);
  const firstRows: number[] = [];
  const newSpellings: number[] = [];
  return {
    column: { values, faults, animals, firstRows, newSpellings },
    read(rows, from, to) {
      for (let row = from; row < to; row++) {
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
    },
  };
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
