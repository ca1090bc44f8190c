import { found } from "../tables/visitTables.ts";
import type { SheetPlan } from "../writing/authorWorkbook.ts";
import { sayWhenMissing } from "../writing/missingFunctions.ts";
import { cellOn, cellsOn, rowCell } from "../writing/references.ts";
import type { Content } from "../writing/sheetAuthor.ts";
import { planLines, sheetNames } from "./placedVisit.ts";

const headingRow = 3;
const headings = ["step", "what", "why", "caution"] as const;
const first = headingRow + 1;
/** The plans of four lesions. */
const printed = 80;

// As many lines as there are. One list, and nothing below it, so that no blank page is printed. The rows counted are
// those of the other sheet, or the list would be counted from itself.
const rows = found.room * planLines;
const firstRow = cellOn(sheetNames.planLines, { row: 0, column: 0 });
const most = cellsOn(sheetNames.planLines, { top: 0, left: 0, bottom: rows - 1, right: 0 });
const lines = `ROW(${firstRow}:INDEX(${most},MAX(INDEX(plan_lines,0,1))))`;
// A call of ours makes it a list that spills in every spreadsheet, and says #NAME? where there are no functions.
const column = (step: number): Content => ({
  list: `VLOOKUP(${lines},plan_lines,${step + 2},FALSE)&""`,
  room: { rows, columns: 1 },
  unless: ["COUNTA(VisitFound[Lesion])*LEN(FOOT.ABOUT())=0", '""'],
});

/** A care plan for each lesion found, one below the other. */
export const planSheet: SheetPlan = {
  name: sheetNames.plan,
  write(sheet) {
    sheet.widths(7, 58, 48, 46);
    sheet.title("Care plan");
    sayWhenMissing(sheet, { row: 0, column: 2 });
    const words = [
      'IF(COUNTA(VisitFound[Lesion])=0,"No lesions are written down on the sheet Visit.","Common practice for a usual case. Medicines only as your vet prescribed. Footbath, doses and clear dates: sheet Doses; bought-in sheep: sheet Quarantine.")',
      'IF(COUNTA(VisitFound[Lesion])*(LEN(has_footrot)*LEN(has_codd)=0),"Not answered on the sheet Visit, and taken as no: does the flock have footrot, and CODD?","")',
    ];
    words.forEach((formula, step) => {
      sheet.put({ row: 1 + step, column: 0 }, { formula }, "note");
    });
    const bottom = first + rows - 1;
    sheet.dress({ top: first, left: 0, bottom, right: 3 }, "words");
    sheet.dress({ top: first, left: 0, bottom, right: 0 }, "wordsCentre");
    headings.forEach((heading, step) => {
      const place = { row: headingRow, column: step };
      sheet.put(place, heading, step === 0 ? "workedHeadingCentre" : "workedHeading");
      sheet.put({ row: first, column: step }, column(step));
    });
    const [step, what] = [rowCell({ row: first, column: 0 }), rowCell({ row: first, column: 1 })];
    sheet.emphasize(
      { top: first, left: 0, bottom, right: 3 },
      [`AND(LEN(${what})>0,LEN(${step})=0)`, "strong"],
      [`LEN(${what})>0`, "line"],
    );
    sheet.freezeAt({ row: first, column: 0 });
    sheet.protect();
    const upTo = { row: first + printed - 1, column: 3 };
    const next = rowCell({ row: first + printed, column: 1 });
    const more = `Printed up to row ${first + printed}: print the rest too.`;
    // Where the list has its whole room from the start, its blank rows would be printed too.
    if (sheet.edition === "libreoffice")
      sheet.put({ row: 0, column: 3 }, { formula: `IF(LEN(${next})=0,"","${more}")` }, "careHeading");
    sheet.print({
      sideways: true,
      repeat: [headingRow, headingRow],
      ...(sheet.edition === "libreoffice" ? { upTo } : {}),
    });
  },
};
