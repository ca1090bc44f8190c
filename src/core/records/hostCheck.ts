import type { Cell } from "../../cells/cell.ts";
import { isBlankCell, isCellError, showCell } from "../../cells/cell.ts";
import { days1904, firstDay, lastDay, momentFromText, showDay } from "../../cells/day.ts";
import { Problem } from "../../cells/problem.ts";

/** One line of what a spreadsheet does with its cells. */
export interface HostLine {
  readonly about: string;
  readonly arrivesAs: string;
  readonly means: string;
  readonly todo: string;
}

const guard = 'write IF(range="","",range) in place of range';

/**
 * What a spreadsheet hands over for blank cells and for a date, and what follows from it.
 *
 * @param blanks - blank cells as they arrived, one or more
 * @param date - a date cell as it arrived
 * @param dayOffset - what is already added to dates: 1462 where the workbook is known to count from 1904
 * @throws Problem when a blank cell is not blank, or the date cell holds no date at all
 * @see two date systems 1462 days apart: ECMA-376 Part 1 §18.17.4.1
 * @example
 * hostCheck([0], 46095, 0)[1]
 * // → { about: "SCOREPREV", arrivesAs: "0", means: "a sheep not scored would count as score 0, …", todo: 'write IF(…', }
 */
export function hostCheck(blanks: readonly Cell[], date: Cell, dayOffset: number): readonly HostLine[] {
  const kinds = [...new Set(blanks.map(blankKind))];
  const arrivesAs = kinds.join(" or ");
  const hides = kinds.includes("0");
  const line = (about: string, danger: string, safe: string): HostLine => ({
    about,
    arrivesAs,
    means: hides ? danger : safe,
    todo: hides ? guard : "nothing",
  });
  return [
    line(
      "blank cell",
      "a blank cell cannot be told from a 0, if these cells are truly empty",
      "a blank cell stays blank",
    ),
    line("SCOREPREV", "a sheep not scored would count as score 0, which is a sound sheep", "it needs no guard"),
    line(
      "count of lame sheep",
      "a gather whose count is missing would count as one without a lame sheep",
      "a missing count is seen to be missing",
    ),
    line(
      "withdrawal days",
      "danger: a missing withdrawal period would count as 0 days, and the animal as clear",
      "a missing withdrawal period is seen to be missing",
    ),
    dateLine(date, dayOffset),
  ];
}

function blankKind(cell: Cell): string {
  if (cell === 0) return "0";
  // As null or as an empty text: some hosts change the one into the other, and both are read as blank.
  if (isBlankCell(cell)) return typeof cell === "string" && cell !== "" ? "spaces" : "a blank";
  throw new Problem(`it holds ${showCell(cell)}; give cells that are empty`, { argument: "blank_cell" });
}

function dateLine(date: Cell, dayOffset: number): HostLine {
  const about = "date cell";
  if (date === 0 || isBlankCell(date))
    throw new Problem("it is blank; give a cell that holds a date", { argument: "date_cell" });
  if (typeof date === "boolean" || isCellError(date))
    throw new Problem(`it holds ${showCell(date)}; give a cell that holds a date`, { argument: "date_cell" });
  if (typeof date === "string") {
    const day = momentFromText(date);
    return {
      about,
      arrivesAs: `text, ${showCell(date)}`,
      means: day === undefined ? "it is refused as a date: 03/04 means two days" : `it is read as ${showDay(day)}`,
      todo: day === undefined ? "enter it again as a real date, or as 2026-03-14" : "nothing",
    };
  }
  const serial = (date as number) + dayOffset;
  const arrivesAs = `the number ${date}`;
  const ifLate = serial + days1904;
  if (isRecordDay(serial))
    return {
      about,
      arrivesAs,
      means: `it is read as ${showDay(serial)}, counted from ${dayOffset === 0 ? 1900 : 1904}`,
      todo:
        dayOffset !== 0 || !isRecordDay(ifLate)
          ? "nothing, if the cell shows that day"
          : `nothing, if the cell shows that day; if it shows ${showDay(ifLate)}, the workbook counts from 1904: switch that off, or enter dates as text such as 2026-03-14`,
    };
  return {
    about,
    arrivesAs,
    means:
      isRecordDay(ifLate) && dayOffset === 0
        ? `it looks like ${showDay(ifLate)} in a workbook that counts from 1904`
        : "it is no date from 1990 to 2100, and is refused",
    todo:
      isRecordDay(ifLate) && dayOffset === 0
        ? "switch off counting from 1904, or enter dates as text such as 2026-03-14"
        : "enter it again as a real date",
  };
}

const isRecordDay = (serial: number): boolean => serial >= firstDay && serial < lastDay + 1;
