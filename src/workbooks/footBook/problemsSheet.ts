import { recordCheckFunction } from "../../../functions/records/recordCheck.ts";
import { columnLetters } from "../../workbook/address.ts";
import type { SheetPlan } from "../writing/authorWorkbook.ts";
import { orWords } from "../writing/orWords.ts";
import { listLooks, writeList } from "../writing/writeList.ts";
import { caseHeadings, firstRecord, gatherHeadings, room, sheetNames } from "./bookTables.ts";
import { ofMedicine } from "./formulas.ts";

const firstCheck = 5;
const rows = 2000;

interface Check {
  readonly words: string;
  /** 1 for each row that is wrong. */
  readonly wrong: string;
  readonly column: string;
}

// RECORDCHECK knows treatment records; the counts of a gather are looked at here.
const checks: readonly Check[] = [
  {
    words: "Gathers with more lame than looked at",
    wrong: "ISNUMBER(Gathers[Lame])*ISNUMBER(Gathers[Looked at])*(Gathers[Lame]>Gathers[Looked at])",
    column: "Gathers[Lame]",
  },
  {
    words: "Gathers with a number kept as text, or with words for a number",
    wrong: "(ISTEXT(Gathers[Lame])+ISTEXT(Gathers[Looked at])>0)*1",
    column: "Gathers[Lame]",
  },
  {
    words: "Gathers with a part left blank",
    wrong:
      "(LEN(Gathers[Date])+LEN(Gathers[Group])+LEN(Gathers[Looked at])+LEN(Gathers[Lame])>0)*(LEN(Gathers[Date])*LEN(Gathers[Group])*LEN(Gathers[Looked at])*LEN(Gathers[Lame])=0)",
    column: "Gathers[Lame]",
  },
  {
    words: "Cases with fewer withdrawal days than the settings say for the medicine",
    wrong: `ISNUMBER(Cases[Withdrawal days])*(Cases[Withdrawal days]<IFERROR(${ofMedicine(4)}*1,0))`,
    column: "Cases[Tag]",
  },
  {
    words: "Cases with an injection of a medicine, but no ml",
    wrong: '(LEFT(Cases[Treatment],9)="injection")*(Cases[Medicine]<>"")*(LEN(Cases[Dose ml])=0)',
    column: "Cases[Tag]",
  },
  {
    words: "Cases with an antibiotic whose strength, mg per ml, is not in the settings: Medicine use cannot count it",
    wrong: `(Cases[Medicine]<>"")*(LEN(Cases[Dose ml])>0)*(${ofMedicine(5)}<>"no")*(IFERROR(${ofMedicine(2)}*1,0)=0)`,
    column: "Cases[Tag]",
  },
];

const below = (sheet: string, end: number, right: string): string =>
  `COUNTA('${sheet}'!$A$${end + 1}:$${right}$${end + 500})`;
const headings = firstCheck + checks.length + 5;

const check = (table: string): string => `FOOT.RECORDCHECK(${table}[#Headers],${table}[#Data],as_of)`;

/** RECORDCHECK gives rows of the table; the sheet's own rows are found faster. */
const inSheetRows = (found: string): string => `IFERROR(${found}+{${firstRecord},0,0,0},${found})`;

/** What in the records should be mended, row by row. */
export const problemsSheet: SheetPlan = {
  name: sheetNames.problems,
  write(sheet, nameCell) {
    const right = 5;
    for (const column of [0, right]) {
      listLooks(recordCheckFunction).forEach((look, step) => {
        sheet.columnLook(column + step, column + step, look);
      });
    }
    sheet.widths(9, 18, 62, 84, 3, 9, 18, 62, 84);
    sheet.dress({ top: 0, left: 0, bottom: headings - 2, right: right + 3 }, "note");
    sheet.title("Problems");
    sheet.put(
      { row: 1, column: 0 },
      "Slips of the hand that were found. Nothing is changed for you: mend them in Gathers and Cases. Rows here are rows of those sheets.",
    );
    sheet.putRow({ row: firstCheck - 1, column: 0 }, ["rows", "last in row", "what"], "workedHeading");
    checks.forEach(({ words, wrong, column }, place) => {
      const row = firstCheck + place;
      sheet.put({ row, column: 0 }, { formula: `SUM(${wrong})`, array: true }, "workedCount");
      sheet.put(
        { row, column: 1 },
        { formula: `IF(A${row + 1}=0,"",MAX(${wrong}*ROW(${column})))`, array: true },
        "workedCount",
      );
      sheet.put({ row, column: 2 }, words, "worked");
    });
    const row = firstCheck + checks.length;
    const rowsBelow = `${below(sheetNames.gathers, firstRecord + room.gathers, columnLetters(gatherHeadings.length - 1))}+${below(sheetNames.cases, firstRecord + room.cases, columnLetters(caseHeadings.length - 1))}`;
    sheet.put({ row, column: 0 }, { formula: rowsBelow }, "workedCount");
    sheet.put({ row, column: 1 }, null, "worked");
    sheet.put({ row, column: 2 }, "Cells filled below the end of a table, where nothing is counted", "worked");
    const [top, last] = [headings + 2, headings + rows + 1];
    const count = { top: 2, left: 0, bottom: 2, right: 0 };
    const found = (letter: string): string => `COUNT($${letter}$${top}:$${letter}$${last})`;
    sheet.put(
      { row: 2, column: 0 },
      { formula: `${found("A")}+${found("F")}+SUM($A$${firstCheck + 1}:$A$${row + 1})` },
      "figure",
    );
    sheet.put({ row: 2, column: 1 }, "things to look at", "subtitle");
    nameCell("problems_found", sheetNames.problems, count);
    nameCell("problems_cut_off", sheetNames.problems, { top: headings - 2, left: 0, bottom: headings - 2, right: 0 });
    sheet.emphasize({ top: firstCheck, left: 0, bottom: row, right: 2 }, [`$A${firstCheck + 1}>0`, "strong"]);
    for (const { question, column, table } of [
      { question: "Cases: how each heading was read, then what to mend", column: 0, table: "Cases" },
      {
        question: "Gathers: only the dates are checked here; tags and withdrawal days stand in Cases",
        column: right,
        table: "Gathers",
      },
    ])
      writeList(sheet, {
        question,
        row: headings,
        column,
        rows,
        // More than one thing may be wrong with a row.
        longest: 10 * room.cases,
        counted: check(table),
        gives: recordCheckFunction,
        formula: orWords(inSheetRows(check(table)), "not worked out: see Start"),
        strong: `ISNUMBER($${columnLetters(column)}${top})`,
      });
    sheet.freezeAt({ row: 3, column: 0 });
    sheet.newPageAt(right);
    sheet.protect();
    sheet.print({
      sideways: true,
      across: 2,
    });
  },
};
