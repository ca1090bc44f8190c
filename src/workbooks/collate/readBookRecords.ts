import { type Cell, isBlankCell } from "../../cells/cell.ts";
import type { Day } from "../../cells/day.ts";
import { numberIn } from "../../cells/numberIn.ts";
import { usualLimits } from "../../workbook/limits.ts";
import { lookInto } from "../../workbook/lookInto.ts";
import type { Packing } from "../../workbook/zip/packing.ts";
import { cases as casesTable } from "../tables/cases.ts";
import { gathers as gathersTable } from "../tables/gathers.ts";
import { dayReader } from "./dayReader.ts";
import { cellUnder } from "./findRecords.ts";
import type { FlockRecord } from "./flockRecord.ts";
import { neededInCases } from "./readCases.ts";
import { flockRecordIn, neededTable } from "./readFootBook.ts";
import { neededInGathers } from "./readGathers.ts";

/** A row of Gathers; undefined is what is blank or cannot be read. */
interface BookGather {
  readonly group: string | undefined;
  readonly day: Day | undefined;
  readonly lookedAt: number | undefined;
  readonly lame: number | undefined;
}

/** A row of Cases that names an animal, or should; undefined is what is blank or cannot be read. */
interface BookCase {
  readonly tag: string | undefined;
  readonly day: Day | undefined;
}

export interface BookRecords {
  /** As written in the book's settings; undefined where nothing is. */
  readonly flock: string | undefined;
  readonly gathers: readonly BookGather[];
  readonly cases: readonly BookCase[];
  /** The few numbers that a comparison needs of what is done. */
  readonly record: FlockRecord;
}

/**
 * The rows of a Flock foot book, one by one.
 *
 * @throws WorkbookProblem with the reason when the file cannot be used
 */
export function readBookRecords(bytes: Uint8Array, packing?: Packing): BookRecords {
  const workbook = lookInto(bytes, usualLimits, packing);
  const record = flockRecordIn(workbook);
  const foundGathers = neededTable(workbook, gathersTable, neededInGathers);
  const foundCases = neededTable(workbook, casesTable, neededInCases);
  const dayIn = dayReader(workbook.dayOffset);
  const ofGather = cellUnder(gathersTable, foundGathers.headings);
  const ofCase = cellUnder(casesTable, foundCases.headings);
  return {
    record,
    flock: record.flock,
    gathers: foundGathers.rows
      .filter(({ cells }) => neededInGathers.some((key) => !isBlankCell(ofGather(cells, key))))
      .map(({ cells }) => ({
        group: textIn(ofGather(cells, "group")),
        day: dayIn(ofGather(cells, "date")),
        lookedAt: numberIn(ofGather(cells, "lookedAt")),
        lame: numberIn(ofGather(cells, "lame")),
      })),
    cases: foundCases.rows.flatMap(({ cells }): readonly BookCase[] => {
      const tag = textIn(ofCase(cells, "tag"));
      // A whole group was treated at once: no case of one animal.
      if (tag === undefined && textIn(ofCase(cells, "group")) !== undefined) return [];
      const seen = ofCase(cells, "seen");
      return [{ tag, day: dayIn(isBlankCell(seen) ? ofCase(cells, "treated") : seen) }];
    }),
  };
}

const textIn = (cell: Cell): string | undefined =>
  isBlankCell(cell) || typeof cell === "object" ? undefined : String(cell).trim();
