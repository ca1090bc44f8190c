import type { Cell, Cells } from "../../cells/cell.ts";
import type { Fault } from "../../cells/fault.ts";
import { noAnimal } from "../words/orderByAnimal.ts";
import { type CheckOptions, fieldReader, type Reading } from "./fieldChecks.ts";
import type { FieldColumn } from "./readField.ts";

/** A column of tags as read, with the animals numbered. */
export interface TagColumn extends FieldColumn {
  /** The animal of each row, from 0 in order of first appearance; `noAnimal` where there is none, or it cannot be read. */
  readonly animals: Int32Array;
  readonly animalCount: number;
  /** The rows in which a tag is spelt as in no row before. */
  readonly newSpellings: readonly number[];
}

interface Spelling {
  readonly reading: Reading;
  readonly animal: number;
}

/** @param place - 0-based column among the cells */
export function readTags(rows: Cells, place: number, options: CheckOptions): TagColumn {
  const read = fieldReader("tag", options);
  const known = new Map<Cell, Spelling>();
  const byKey = new Map<string, number>();
  const values = new Array<number | string | undefined>(rows.length);
  const faults = new Map<number, Fault>();
  const animals = new Int32Array(rows.length);
  const newSpellings: number[] = [];
  for (let row = 0; row < rows.length; row++) {
    const cell = rows[row]?.[place] ?? null;
    let spelling = known.get(cell);
    if (spelling === undefined) {
      const reading = read(cell);
      spelling = { reading, animal: animalOf(reading, byKey) };
      known.set(cell, spelling);
      newSpellings.push(row);
    }
    const { reading, animal } = spelling;
    values[row] = reading.value;
    if (reading.fault !== undefined) faults.set(row, reading.fault);
    animals[row] = animal;
  }
  return { values, faults, animals, animalCount: byKey.size, newSpellings };
}

function animalOf({ value }: Reading, byKey: Map<string, number>): number {
  if (typeof value !== "string") return noAnimal;
  const animal = byKey.get(value) ?? byKey.size;
  byKey.set(value, animal);
  return animal;
}
