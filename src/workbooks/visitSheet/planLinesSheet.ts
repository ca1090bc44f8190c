import type { SheetPlan } from "../writing/authorWorkbook.ts";
import { cutOff } from "../writing/cutOff.ts";
import { orWords } from "../writing/orWords.ts";
import { planRow } from "./visitFormulas.ts";
import { room, sheetNames } from "./visitTables.ts";

const right = 4;

const found = (column: string, place: number): string => `INDEX(VisitFound[${column}],${place + 1})`;
const yes = (cell: string): string => `IF(LEN(${cell})=0,FALSE,${cell})`;

/** The plan for each finding in a place that does not move; the sheet Care plan closes the gaps between them. */
export const planLinesSheet: SheetPlan = {
  name: sheetNames.planLines,
  write(sheet, nameCell) {
    sheet.widths(7, 7, 58, 48, 46);
    sheet.title("Plan lines");
    sheet.put({ row: 1, column: 0 }, "What the sheet Care plan is made from. Nothing to type here.", "note");
    const [top, bottom] = [planRow(0), planRow(room.found) - 1];
    sheet.dress({ top, left: 0, bottom, right }, "words");
    sheet.put({ row: top - 1, column: 0 }, "line", "workedHeading");
    for (let place = 0; place < room.found; place++) {
      const row = planRow(place);
      const lesion = found("Lesion", place);
      const severe = found("Severe", place);
      // A blank cell would come out of the list as 0.
      for (const column of [1, 3, 4]) sheet.put({ row, column }, { formula: '""' });
      sheet.put(
        { row, column: 2 },
        { formula: `IF(LEN(${lesion})=0,"",${lesion}&IF(${severe}="yes",", severe",""))` },
        "strong",
      );
      const asked = [lesion, ...["has_footrot", "has_codd", found("Pus let out", place), severe].map(yes)];
      const plan = orWords(`FOOT.CAREPLAN(${asked.join(",")})`, "not worked out: choose the lesion from the list");
      const formula = `IF(LEN(${lesion})=0,"",${plan})`;
      sheet.put({ row: row + 1, column: 1 }, { formula });
      sheet.put({ row, column: right + 1 }, { formula: cutOff(formula, `$B$${row + 2}:$B$${planRow(place + 1)}`) });
    }
    for (let row = top; row <= bottom; row++) {
      const n = row + 1;
      // Each plan brings the headings along, which the sheet Care plan has once. Joined to nothing, a text that a
      // function gave is found equal to a typed one in every spreadsheet.
      const isLine = `AND(LEN($B${n}&$C${n})>0,$B${n}&""<>"step")`;
      const before = row === top ? "1" : `MAX($A$${top + 1}:$A$${row})+1`;
      sheet.put({ row, column: 0 }, { formula: `IF(${isLine},${before},"")` }, "workedCount");
    }
    nameCell("plan_lines", sheet.name, { top, left: 0, bottom, right });
    nameCell("plans_cut_off", sheet.name, { top, left: right + 1, bottom, right: right + 1 });
    sheet.protect();
    sheet.print({ cells: `$A$1:$E$${bottom + 1}`, onOnePage: true });
  },
};
