import type { DuckDBConnection } from "@duckdb/node-api";
import { nameKey } from "../../core/words/nameKey.ts";
import { several } from "../../workbooks/collate/doneFigure.ts";
import { type FlockDone, flockDone } from "../../workbooks/collate/flockDone.ts";
import type { FlockRecord } from "../../workbooks/collate/flockRecord.ts";
import type { LoadedRecords } from "./loadRecords.ts";
import { eachChunk } from "./openDuck.ts";

/** What is done in one flock, or why that is not known. */
export type DoneOrWhyNot = FlockDone | string;

const notInFiles = "csv and Parquet files do not hold it";
const besideBook = "case records stand in csv or Parquet files beside the foot book, and do not hold it";

/**
 * What is done in each flock, as `collate` counts it from its foot book.
 *
 * @param books - what is kept of each book that is counted, by the key of its flock
 * @returns one a flock, in the order of their numbers
 */
export async function flocksDone(
  duck: DuckDBConnection,
  { flocks, unnamed }: LoadedRecords,
  books: ReadonlyMap<string, FlockRecord>,
  year: number,
): Promise<readonly DoneOrWhyNot[]> {
  const inFiles = new Set<number>();
  if (books.size > 0)
    await eachChunk(
      duck,
      "SELECT DISTINCT flock FROM records WHERE NOT of_book AND flock IS NOT NULL",
      ([chunk = []]) => {
        for (const flock of chunk) inFiles.add(Number(flock));
      },
    );
  return flocks.map((name, flock) => {
    const record = books.get(nameKey(name));
    if (record === undefined) return notInFiles;
    if (inFiles.has(flock)) return besideBook;
    // One of them may be of this flock.
    if (unnamed.cases > 0) return `${several(unnamed.cases, "case record")} without a flock may be of this one`;
    return flockDone(record, year);
  });
}
