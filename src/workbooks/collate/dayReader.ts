import type { Cell } from "../../cells/cell.ts";
import type { Day } from "../../cells/day.ts";
import { fieldReader } from "../../core/records/fieldChecks.ts";

/** Reads the day in a cell of a book, without its hour; undefined where it is blank or no day. */
export function dayReader(dayOffset: number): (cell: Cell) => Day | undefined {
  const read = fieldReader("treated", { asOf: undefined, dayOffset });
  return (cell) => {
    const { value } = read(cell);
    return typeof value === "number" ? Math.floor(value) : undefined;
  };
}
