import { type Cell, isBlankCell } from "../../cells/cell.ts";
import { isoText } from "../../cells/day.ts";
import { numberIn } from "../../cells/numberIn.ts";
import { cellNamed } from "../../workbook/cellNamed.ts";
import { usualLimits } from "../../workbook/limits.ts";
import { lookInto, type UnreadWorkbook } from "../../workbook/lookInto.ts";
import { WorkbookProblem } from "../../workbook/workbookProblem.ts";
import type { Packing } from "../../workbook/zip/packing.ts";
import { cases } from "../tables/cases.ts";
import type { Table } from "../tables/defineTable.ts";
import { gathers } from "../tables/gathers.ts";
import { medicines } from "../tables/settingsTables.ts";
import { type FoundRecords, findRecords } from "./findRecords.ts";
import type { FlockRecord, YearRecord } from "./flockRecord.ts";
import { neededInCases, neededInMedicines, readCases } from "./readCases.ts";
import { neededInGathers, readGathers } from "./readGathers.ts";

/** The gap between two cases where a book does not say; the same as a new book has. */
const usualGap = 14;

/**
 * Reads what a comparison needs out of a Flock foot book, whatever was renamed or added, as long as its tables keep
 * their headings.
 *
 * @throws WorkbookProblem with the reason when the file cannot be used
 */
export const readFootBook = (bytes: Uint8Array, packing?: Packing): FlockRecord =>
  flockRecordIn(lookInto(bytes, usualLimits, packing));

/** The same of a workbook that has been looked into. */
export function flockRecordIn(workbook: UnreadWorkbook): FlockRecord {
  const gatherTable = neededTable(workbook, gathers, neededInGathers);
  const caseTable = neededTable(workbook, cases, neededInCases);
  const { dayOffset } = workbook;
  const setting = (name: string): number | undefined => numberIn(cellNamed(workbook, name)?.value ?? null);
  const asOf = setting("as_of");
  const { gathers: counted, leftOut } = readGathers(gatherTable, dayOffset);
  const { begun, courses, coursesWithoutDay, care, inNoCase, findings } = readCases(
    caseTable,
    findRecords(workbook, medicines, neededInMedicines),
    {
      asOf: asOf === undefined ? undefined : Math.floor(asOf + dayOffset),
      dayOffset,
      gapDays: setting("gap_days") ?? usualGap,
    },
  );
  const years = new Map<number, YearRecord>();
  const ofDay = new Map<number, YearRecord>();
  const yearOf = (day: number): YearRecord => {
    const before = ofDay.get(day);
    if (before !== undefined) return before;
    const year = Number(isoText(day).slice(0, 4));
    const record = years.get(year) ?? {
      gathers: 0,
      days: new Map(),
      lookedAt: 0,
      lame: 0,
      cases: 0,
      antibioticMg: 0,
      coursesWithoutMg: 0,
    };
    years.set(year, record);
    ofDay.set(day, record);
    return record;
  };
  for (const { day, lookedAt, lame } of counted) {
    const year = yearOf(day);
    year.gathers++;
    year.lookedAt += lookedAt;
    year.lame += lame;
    const known = year.days?.get(day) ?? { lookedAt: 0, lame: 0 };
    year.days?.set(day, { lookedAt: known.lookedAt + lookedAt, lame: known.lame + lame });
  }
  for (const day of begun) yearOf(day).cases++;
  for (const { day, mg } of courses) {
    const year = yearOf(day);
    if (mg === undefined) year.coursesWithoutMg++;
    year.antibioticMg = mg === undefined || year.antibioticMg === undefined ? undefined : year.antibioticMg + mg;
  }
  const below = [gatherTable, caseTable].flatMap(({ sheet, below: rows }) =>
    rows === 0 ? [] : [`${sheet}: ${rows} filled below the end of the table`],
  );
  return {
    flock: nameIn(cellNamed(workbook, "farm_name")?.value ?? null),
    target: setting("target"),
    breedingSheep: setting("breeding_sheep"),
    slaughterLambs: setting("slaughter_lambs"),
    asOf: asOf === undefined ? undefined : Math.floor(asOf + dayOffset),
    years,
    care,
    inNoCase,
    coursesWithoutDay,
    records: gatherTable.rows.length + caseTable.rows.length,
    toMend: findings + leftOut.length + below.length,
    leftOut: [...leftOut, ...below].map(detached),
    earliest: earliestOf([counted.map(({ day }) => day), begun, courses.map(({ day }) => day)].flat()),
    latest: counted.reduce((latest, { day }) => Math.max(latest, day), 0),
  };
}

/**
 * @throws WorkbookProblem when there is no table with such headings
 */
export function neededTable<K extends string>(
  workbook: UnreadWorkbook,
  table: Table<K>,
  keys: readonly K[],
): FoundRecords {
  const found = findRecords(workbook, table, keys);
  if (found) return found;
  const headings = keys.map((key) => table.columns[key].heading).join(", ");
  throw new WorkbookProblem(`No table of ${table.name.toLowerCase()} in it: none has the headings ${headings}.`);
}

const earliestOf = (days: readonly number[]): number | undefined =>
  days.length === 0 ? undefined : days.reduce((earliest, day) => Math.min(earliest, day));

/** The name of a flock; undefined where nothing is written. */
const nameIn = (cell: Cell): string | undefined =>
  isBlankCell(cell) || typeof cell !== "string" ? undefined : detached(cell.trim().replace(/\s+/g, " "));

// A piece of a long text keeps the whole of it in memory; a copy does not.
const detached = (text: string): string => new TextDecoder().decode(new TextEncoder().encode(text));
