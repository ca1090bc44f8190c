import { recordCheckFunction } from "../../../functions/records/recordCheck.ts";
import type { SheetPlan } from "../writing/authorWorkbook.ts";
import { sayWhenMissing } from "../writing/missingFunctions.ts";
import { placeGrid, writeGrid } from "../writing/placeGrid.ts";
import { dressColumns, placeList, writeList } from "../writing/placeList.ts";
import type { PlacedTable } from "../writing/placeTable.ts";
import { printedLists } from "../writing/printedLists.ts";
import { cellsOn, fixedArea, fixedCell } from "../writing/references.ts";
import { firstRecord, sheetNames } from "./bookSheets.ts";
import { medicineColumn } from "./formulas.ts";
import { besideCases, placedCases, placedGathers } from "./placedRecords.ts";

const rows = 2000;
/** Under the headings, which have lines of their own, a page of them. */
const printed = 32;
/** Lines are counted as far down as a list can grow. */
const most = 20_000;

interface Check {
  readonly words: string;
  /** 1 for each row that is wrong. */
  readonly wrong: string;
  readonly column: string;
}

const gatherKey = 'Gathers[Date]&"|"&TRIM(Gathers[Group])';
const lookAgain = besideCases.range("lookAgain");

const inGathers = (words: string, wrong: string): Check => ({ words, wrong, column: "Gathers[Lame]" });
const inCases = (words: string, wrong: string, column = "Cases[Tag]"): Check => ({ words, wrong, column });

// RECORDCHECK knows treatment records; the counts of a gather are looked at here.
const checks: readonly Check[] = [
  inGathers(
    "Gathers with more lame than looked at",
    "ISNUMBER(Gathers[Lame])*ISNUMBER(Gathers[Looked at])*(Gathers[Lame]>Gathers[Looked at])",
  ),
  inGathers(
    "Gathers with a number kept as text, or with words for a number",
    "(ISTEXT(Gathers[Lame])+ISTEXT(Gathers[Looked at])>0)*1",
  ),
  inGathers(
    "Gathers with a part left blank",
    "(LEN(Gathers[Date])+LEN(Gathers[Group])+LEN(Gathers[Looked at])+LEN(Gathers[Lame])>0)*(LEN(Gathers[Date])*LEN(Gathers[Group])*LEN(Gathers[Looked at])*LEN(Gathers[Lame])=0)",
  ),
  inCases(
    "Cases with fewer withdrawal days than the settings say for the medicine",
    `ISNUMBER(Cases[Withdrawal days])*(Cases[Withdrawal days]<IFERROR(${medicineColumn("withdrawalDays")}*1,0))`,
  ),
  inCases(
    "Cases with an injection of a medicine, but no ml",
    '(LEFT(Cases[Treatment],9)="injection")*(Cases[Medicine]<>"")*(LEN(Cases[Dose ml])=0)',
  ),
  inCases(
    "Cases with an antibiotic whose strength, mg per ml, is not in the settings: Medicine use cannot count it",
    `use_counted*(IFERROR(used_strength*1,0)=0)`,
    "use_counted",
  ),
  inGathers(
    "Gathers of a group that is not in the settings",
    '(LEN(Gathers[Group])>0)*(COUNTIF(Groups[Group],Gathers[Group]&"")=0)',
  ),
  inGathers(
    "Gathers of one group on one day that were typed twice",
    `(LEN(Gathers[Date])>0)*(MATCH(${gatherKey},${gatherKey},0)<ROW(Gathers[Date])-${firstRecord})`,
  ),
  inCases(
    "Cases of a group that is not in the settings",
    '(LEN(Cases[Group])>0)*(COUNTIF(Groups[Group],Cases[Group]&"")=0)',
  ),
  inCases(
    "Second looks that fell due before the year looked at, and were never written down: no longer on Today",
    `ISNUMBER(${lookAgain})*(${lookAgain}<year_from)*ISNUMBER(SEARCH("overdue",${besideCases.range("secondLook")}))`,
  ),
  inGathers(
    "Gathers with a day that is no real date, or is yet to come",
    "(LEN(Gathers[Date])>0)*(1-ISNUMBER(Gathers[Date])*(Gathers[Date]<=MAX(as_of,TODAY())))",
  ),
];

/** What stands in the rows under a table, where nothing is counted. */
const below = (sheet: string, { area }: Pick<PlacedTable<string>, "area">): string =>
  `COUNTA(${cellsOn(sheet, { ...area, top: area.bottom + 1, bottom: area.bottom + 500 })})`;

const counts = placeGrid(sheetNames.problems, ["rows", "last", "what"], { row: 4, column: 0 }, checks.length + 1);
const headings = counts.area.bottom + 5;

const list = placeList(sheetNames.problems, recordCheckFunction, { row: headings, column: 0 });
const check = `FOOT.RECORDCHECK(Cases[#Headers],Cases[#Data],as_of,${firstRecord + 1})`;

/** What in the records should be mended, row by row. */
export const problemsSheet: SheetPlan = {
  name: sheetNames.problems,
  write(sheet, nameCell) {
    dressColumns(sheet, list);
    sheet.widths(9, 18, 62, 84);
    sheet.dress({ top: 0, left: 0, bottom: headings - 3, right: 3 }, "note");
    sheet.title("Problems");
    sayWhenMissing(sheet, { row: 0, column: 2 });
    sheet.put(
      { row: 1, column: 0 },
      "Slips of the hand that were found. Nothing is changed for you: mend them in Gathers and Cases. Rows here are rows of those sheets.",
    );
    const rowsBelow = `${below(sheetNames.gathers, placedGathers)}+${below(sheetNames.cases, placedCases)}`;
    writeGrid(sheet, counts, {
      rows: {
        heading: "rows",
        look: "workedCount",
        holds: ({ place }) => {
          const wrong = checks[place]?.wrong;
          return wrong === undefined ? { formula: rowsBelow } : { formula: `SUM(${wrong})`, array: true };
        },
      },
      last: {
        heading: "last in row",
        look: "workedCount",
        holds: ({ place, cell }) => {
          const { wrong, column } = checks[place] ?? {};
          const formula = `IF(${cell("rows")}=0,"",MAX(${wrong}*ROW(${column})))`;
          return wrong === undefined ? null : { formula, array: true };
        },
      },
      what: {
        heading: "what",
        look: "worked",
        holds: ({ place }) => checks[place]?.words ?? "Cells filled below the end of a table, where nothing is counted",
      },
    });
    const total = { row: 2, column: 0 };
    // What failed has no number, and then there is none in all.
    const sum = `COUNT(${list.range("row", most)})+SUM(${fixedArea(counts.column("rows"))})`;
    sheet.put(total, { formula: `IF(ISERROR(${fixedCell(list.at)}),NA(),${sum})` }, "figure");
    const longer = `LEN(${fixedCell({ ...list.at, row: list.at.row + rows })})`;
    sheet.put(
      { row: 2, column: 1 },
      sheet.edition === "excel"
        ? "things to look at"
        : { formula: `"things to look at"&IF(${longer}=0,"",", and more: see the last rows")` },
      "subtitle",
    );
    nameCell("problems_found", sheetNames.problems, total);
    sheet.emphasize(counts.rows, [`${counts.cell("rows")}>0`, "strong"]);
    writeList(sheet, list, {
      question: "Cases: how each heading was read, then what to mend",
      rows,
      formula: check,
      strong: (cell) => `ISNUMBER(${cell("row")})`,
    });
    sheet.freezeAt({ row: 3, column: 0 });
    sheet.protect();
    const upTo = printedLists(sheet, [list], printed);
    sheet.print({ sideways: true, repeat: [headings, headings], ...(upTo && { upTo }) });
  },
};
