import ExcelJS from "exceljs";
import { dayOf, days1904 } from "../../src/cells/day.ts";
import { sheetNames } from "../../src/workbooks/footBook/bookSheets.ts";
import { seededRandom } from "../../src/workbooks/inventedFlock/seededRandom.ts";
import { cases } from "../../src/workbooks/tables/cases.ts";
import type { KeyOf } from "../../src/workbooks/tables/defineTable.ts";
import { gathers } from "../../src/workbooks/tables/gathers.ts";
import { medicines } from "../../src/workbooks/tables/settingsTables.ts";

type Typed = string | number | null;

/** What a made book holds, so that a test can count for itself. */
export interface MadeBook {
  readonly farm: string;
  readonly gathers: readonly { readonly day: number; readonly seen: number; readonly lame: number }[];
  readonly cases: readonly { readonly day: number; readonly ml: number }[];
}

/** What a person may have changed. */
export interface Changes {
  readonly gathersSheet?: string;
  readonly tableNames?: (name: string) => string;
  /** Columns in another order, with one more in front. */
  readonly turned?: boolean;
  /** The lists stand as plain cells, as some programs save them. */
  readonly plain?: boolean;
  readonly heading?: (heading: string) => string;
  readonly farm?: string;
  readonly lastGather?: readonly Typed[];
  /** Days are counted from 1904, as workbooks begun on old Macs do. */
  readonly from1904?: boolean;
  /** A sheet of the farm's own before all others, with a list that has dates and lame sheep too. */
  readonly ownSheet?: boolean;
}

const strength = 200;

/** Invents a flock's records: `caseCount` cases and a gather of two groups every month of two years. */
export function inventBook(seed: number, caseCount: number): MadeBook {
  const random = seededRandom(seed);
  const share = 0.02 + 0.1 * random.share();
  const gathers = Array.from({ length: 24 }, (_, month) => {
    const year = 2025 + Math.floor(month / 12);
    const seen = random.whole(40, 200);
    const lame = Array.from({ length: seen }, () => random.happens(share)).filter(Boolean).length;
    return { day: dayOf(`${year}-${String((month % 12) + 1).padStart(2, "0")}-10`), seen, lame };
  });
  const cases = Array.from({ length: caseCount }, () => ({
    day: dayOf("2026-01-01") + random.whole(0, 300),
    ml: random.whole(40, 90) / 10,
  }));
  return { farm: `Farm ${seed}`, gathers, cases };
}

export const mgOf = ({ cases }: MadeBook): number => cases.reduce((sum, { ml }) => sum + ml * strength, 0);

interface FilledCase {
  readonly day: number;
  readonly ml: number;
  readonly place: number;
}

const filled: Partial<Record<KeyOf<typeof cases>, (record: FilledCase) => Typed>> = {
  seen: ({ day }) => day,
  treated: ({ day }) => day,
  // An animal each, so that every record is a case of its own.
  tag: ({ place }) => `ZZ 0123456 ${String(place).padStart(5, "0")}`,
  group: () => "Ewes",
  foot: () => "LF",
  lesion: () => "footrot",
  score: () => 3,
  treatment: () => "injection",
  medicine: () => "Medicine A",
  ml: ({ ml }) => ml,
  withdrawalDays: () => 35,
};

/** Writes a book with a general library: the tables of a Flock foot book, changed as a person might. */
export async function makeFootBook(book: MadeBook, changes: Changes = {}): Promise<Uint8Array> {
  const { gathersSheet = sheetNames.gathers, heading = (text) => text, plain = false } = changes;
  const workbook = new ExcelJS.Workbook();
  const dayIn = (day: number): number => (changes.from1904 ? day - days1904 : day);
  if (changes.from1904) workbook.properties.date1904 = true;
  if (changes.ownSheet) {
    const own = workbook.addWorksheet("Our notes");
    own.addTable({
      name: "Notes",
      ref: "B2",
      columns: ["Date", "Lame", "What we did"].map((name) => ({ name })),
      rows: [[dayIn(dayOf("2026-02-01")), 7, "moved the fence"]],
    });
  }
  const settings = workbook.addWorksheet(`Our ${sheetNames.settings}`);
  const named: readonly (readonly [string, Typed])[] = [
    ["farm_name", changes.farm ?? book.farm],
    ["target", 0.03],
    ["breeding_sheep", 300],
    ["slaughter_lambs", 400],
    ["gap_days", 14],
  ];
  named.forEach(([name, value], index) => {
    settings.getCell(index + 1, 2).value = value;
    workbook.definedNames.add(`'${settings.name}'!$B$${index + 1}`, name);
  });
  const put = (
    sheet: ExcelJS.Worksheet,
    name: string,
    at: { row: number; column: number },
    headings: readonly string[],
    rows: Typed[][],
  ) => {
    if (plain) {
      [headings, ...rows].forEach((cells, step) => {
        cells.forEach((cell, index) => {
          sheet.getCell(at.row + step, at.column + index).value = cell;
        });
      });
      return;
    }
    const ref = sheet.getCell(at.row, at.column).address;
    sheet.addTable({
      name: changes.tableNames?.(name) ?? name,
      ref,
      columns: headings.map((text) => ({ name: text })),
      rows,
    });
  };
  put(settings, "Medicines", { row: 10, column: 1 }, medicines.headings, [
    ["medicine A", strength, 20, 35, "yes"],
    ["drench", 50, 1, 7, "no"],
  ]);
  const gatherRows = book.gathers.map(({ day, seen, lame }): Typed[] => [dayIn(day), "Ewes", seen, lame, null]);
  if (changes.lastGather) gatherRows.push([...changes.lastGather]);
  const turn = <T>(cells: readonly T[], first: T): T[] =>
    changes.turned ? [first, ...[...cells].reverse()] : [...cells];
  put(
    workbook.addWorksheet(gathersSheet),
    "Gathers",
    changes.turned ? { row: 12, column: 4 } : { row: 4, column: 1 },
    turn(gathers.headings.map(heading), "Weather"),
    gatherRows.map((cells) => turn(cells, "wet")),
  );
  put(
    workbook.addWorksheet(sheetNames.cases),
    "Cases",
    { row: 4, column: 1 },
    cases.headings,
    book.cases.map((record, index) =>
      cases.keys.map((key) => filled[key]?.({ ...record, day: dayIn(record.day), place: index }) ?? null),
    ),
  );
  return new Uint8Array(await workbook.xlsx.writeBuffer());
}
