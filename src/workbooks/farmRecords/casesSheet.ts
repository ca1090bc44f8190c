import { caseHeadings, type TypedRow } from "../inventedFlock/asTyped.ts";
import type { SheetPlan } from "../writing/authorWorkbook.ts";
import type { Look } from "../writing/looks.ts";
import { type caseWorked, firstRecord, headingRow, recordArea, sheetNames } from "./recordRanges.ts";

interface Worked {
  readonly heading: string;
  /** The formula in the sheet's row `n`. */
  readonly formula: (n: number) => string;
  readonly look: Look;
  /** It stands in the first row only and fills the others. */
  readonly spills?: boolean;
}

const worked: Readonly<Record<(typeof caseWorked)[number], Worked>> = {
  clear: {
    heading: "Clear for food from",
    // One formula for the column: a blank single cell reaches some spreadsheets' functions as 0, and forgotten days
    // must never become 0 days. Within a column a blank stays blank.
    formula: () => "FOOT.CLEARDATE(Cases[Treated],Cases[Withdrawal days])",
    spills: true,
    look: "workedDate",
  },
  lookAgain: {
    heading: "Look again on",
    formula: (n) => `IF(B${n}="","",FOOT.RECHECKDUE(B${n},look_again_after))`,
    look: "workedDate",
  },
  lookState: {
    heading: "Second look",
    formula: (n) => `IF(B${n}="","",FOOT.RECHECKSTATE(Q${n},M${n},as_of))`,
    look: "worked",
  },
  lesion: {
    heading: "Lesion, usual name",
    formula: (n) => `IF(F${n}="","",FOOT.LESIONNAME(F${n}))`,
    look: "worked",
  },
};

const centredColumns = ["Foot", "Score", "Dose ml", "Strength mg/ml", "Withdrawal days", "Weight kg"];
const dateColumns = ["Seen lame", "Treated", "Looked again", "Sound on"];

/** The case records as typed, with the dates and states that follow from each row beside it. */
export const casesSheet = (cases: readonly TypedRow[]): SheetPlan => ({
  name: sheetNames.cases,
  write(sheet) {
    sheet.widths(12, 12, 23, 22, 6, 18, 7, 19, 12, 8, 10, 11, 12, 12, 9, 13, 13, 16, 32);
    sheet.put({ row: 0, column: 0 }, "Cases", "title");
    sheet.rowHeight(0, 28);
    sheet.put({ row: 1, column: 0 }, "Typed in on the left; the pale green columns are worked out.", "note");
    sheet.rowHeight(headingRow, 32);
    sheet.putRow({ row: headingRow, column: 0 }, caseHeadings, "heading");
    const columns = Object.values(worked);
    sheet.putRow(
      { row: headingRow, column: caseHeadings.length },
      columns.map(({ heading }) => heading),
      "workedHeading",
    );
    const looks = [...caseHeadings.map(lookOf), ...columns.map(({ look }) => look)];
    looks.forEach((look, column) => {
      const area = { top: firstRecord, left: column, bottom: headingRow + cases.length, right: column };
      if (look) sheet.dress(area, look);
    });
    cases.forEach((typed, place) => {
      const row = firstRecord + place;
      sheet.putRow({ row, column: 0 }, typed);
      sheet.putRow(
        { row, column: caseHeadings.length },
        columns.map(({ formula, spills }) => (spills && place > 0 ? null : { formula: formula(row + 1) })),
      );
    });
    sheet.table("Cases", recordArea(caseHeadings, cases));
    sheet.freezeAt({ row: firstRecord, column: 3 });
    sheet.printWide();
  },
});

function lookOf(heading: string): Look | undefined {
  if (heading === "Tag") return "tag";
  if (centredColumns.includes(heading)) return "centred";
  return dateColumns.includes(heading) ? "date" : undefined;
}
