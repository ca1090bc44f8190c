import type { Cell } from "../../cells/cell.ts";
import { isBlankCell } from "../../cells/cell.ts";
import type { Fault } from "../../cells/fault.ts";
import { byAnimal } from "../words/byAnimal.ts";
import { readTag } from "../words/tagFault.ts";
import type { Tag } from "../words/tagKey.ts";
import { tagReader } from "../words/tagReader.ts";
import type { ColumnInSteps, FieldColumn } from "./readField.ts";

/** A column of tags as read: its values are the numbers of the animals, from 0 in order of first appearance. */
export interface TagColumn extends FieldColumn {
  readonly values: readonly (number | undefined)[];
  /** The tag of each animal as it was first written. */
  readonly tags: readonly Tag[];
  /** The first row of each animal. */
  readonly firstRows: readonly number[];
  /** The rows in which a tag is spelt as in no row before. */
  readonly newSpellings: readonly number[];
}

/** @param place - 0-based column among the cells */
export function readTags(place: number, height: number): ColumnInSteps<TagColumn> {
  const known = new Map<Cell, number | Fault | null>();
  const numbers = byAnimal<number>();
  const readSpelling = tagReader();
  const values = new Array<number | undefined>(height);
  const faults = new Map<number, Fault>();
  const tags: Tag[] = [];
  const firstRows: number[] = [];
  const newSpellings: number[] = [];
  const meet = (cell: Cell, row: number): number | Fault | null => {
    // Some spreadsheets hand over a blank cell as 0, and no tag is 0.
    if (cell === 0 || isBlankCell(cell)) return null;
    const tag = readTag(cell, readSpelling);
    if ("what" in tag) return tag;
    const met = numbers.get(tag);
    if (met !== undefined) return met;
    const animal = tags.push(tag) - 1;
    firstRows.push(row);
    numbers.set(tag, animal);
    return animal;
  };
  return {
    column: { values, faults, tags, firstRows, newSpellings },
    read(rows, from, to) {
      for (let row = from; row < to; row++) {
        const cell = rows[row]?.[place] ?? null;
        let found = known.get(cell);
        if (found === undefined) {
          found = meet(cell, row);
          known.set(cell, found);
          newSpellings.push(row);
        }
        if (typeof found === "number") values[row] = found;
        else if (found !== null) faults.set(row, found);
      }
    },
  };
}
