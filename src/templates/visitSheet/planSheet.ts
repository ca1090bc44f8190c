import type { SheetPlan } from "../authoring/authorWorkbook.ts";
import { orWords, places } from "./visitFormulas.ts";
import { room, sheetNames } from "./visitTables.ts";

const found = (column: string, place: number): string => `INDEX(VisitFound[${column}],${place + 1})`;
const yes = (cell: string): string => `IF(LEN(${cell})=0,FALSE,${cell})`;

/** Where the plan for a finding stands: its heading line, counted from 0; the list's headings follow. */
export const planRow = (place: number): number => places.firstPlan + place * places.planRows;

/** A care plan for each lesion found. */
export const planSheet: SheetPlan = {
  name: sheetNames.plan,
  write(sheet) {
    sheet.widths(7, 58, 48, 46);
    sheet.hideGrid();
    sheet.put({ row: 0, column: 0 }, "Care plan", "title");
    sheet.rowHeight(0, 28);
    sheet.put(
      { row: 1, column: 0 },
      {
        formula:
          'IF(COUNTA(VisitFound[Lesion])=0,"No lesions are written down on the sheet Visit.","Common practice for a usual case. Medicines only as your vet prescribed.")',
      },
      "note",
    );
    for (let place = 0; place < room.found; place++) {
      const row = planRow(place);
      const lesion = found("Lesion", place);
      const severe = found("Severe", place);
      sheet.put(
        { row, column: 0 },
        { formula: `IF(LEN(${lesion})=0,"",${lesion}&IF(${severe}="yes",", severe",""))` },
        "question",
      );
      sheet.dress({ top: row + 1, left: 0, bottom: row + places.planRows - 2, right: 3 }, "words");
      const asked = [lesion, ...["has_footrot", "has_codd", found("Pus let out", place), severe].map(yes)];
      sheet.put(
        { row: row + 1, column: 0 },
        {
          formula: `IF(LEN(${lesion})=0,"",${orWords(`FOOT.CAREPLAN(${asked.join(",")})`, "not worked out: choose the lesion from the list")})`,
        },
      );
      sheet.emphasize(
        { top: row + 1, left: 0, bottom: row + places.planRows - 2, right: 3 },
        [`LEFT($A${row + 2},4)="step"`, "strong"],
        [`LEN($A${row + 2})>0`, "line"],
      );
      if (place > 0) sheet.newPageAtRow(row);
    }
    sheet.freezeAt({ row: 1, column: 0 });
    sheet.protect();
    const last = planRow(room.found);
    sheet.print({
      sideways: true,
      cells: `$A$1:INDEX($D$1:$D$${last},${places.firstPlan}+${places.planRows}*MAX(1,COUNTA(lesions_found)))`,
    });
  },
};
