import { isBlankCell, showCell } from "../../cells/cell.ts";
import { numberIn } from "../../cells/numberIn.ts";
import type { KeyOf } from "../tables/defineTable.ts";
import { gathers as gathersTable } from "../tables/gathers.ts";
import { dayReader } from "./dayReader.ts";
import { cellUnder, type FoundRecords } from "./findRecords.ts";

/** The columns without which a gather says nothing. */
export const neededInGathers = ["date", "lookedAt", "lame"] as const satisfies readonly KeyOf<typeof gathersTable>[];

interface Gather {
  readonly day: number;
  readonly lookedAt: number;
  readonly lame: number;
}

interface Gathers {
  readonly gathers: readonly Gather[];
  /** Rows that cannot be counted, and why. */
  readonly leftOut: readonly string[];
}

/** Reads the gathers; a row that cannot be counted is named, never guessed at. */
export function readGathers({ sheet, headings, rows }: FoundRecords, dayOffset: number): Gathers {
  const under = cellUnder(gathersTable, headings);
  const gathers: Gather[] = [];
  const leftOut: string[] = [];
  const readDay = dayReader(dayOffset);
  for (const { sheetRow, cells } of rows) {
    const [date, seen, lame] = neededInGathers.map((key) => under(cells, key));
    if ([date, seen, lame].every((cell) => cell === undefined || isBlankCell(cell))) continue;
    const day = readDay(date ?? null);
    const [lookedAt, counted] = [numberIn(seen ?? null), numberIn(lame ?? null)];
    const wrong =
      day === undefined
        ? `${isBlankCell(date) ? "a blank" : showCell(date)} is not a date`
        : !isCount(lookedAt) || !isCount(counted)
          ? "looked at and lame must both be whole numbers"
          : counted > lookedAt
            ? `${counted} lame of ${lookedAt} looked at`
            : undefined;
    if (wrong !== undefined) leftOut.push(`${sheet} row ${sheetRow}: ${wrong}`);
    else gathers.push({ day: day as number, lookedAt: lookedAt as number, lame: counted as number });
  }
  return { gathers, leftOut };
}

const isCount = (value: number | undefined): value is number =>
  value !== undefined && Number.isInteger(value) && value >= 0;
