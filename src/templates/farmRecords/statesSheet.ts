import type { SheetPlan } from "../authoring/authorWorkbook.ts";
import { firstRecord, headingRow, sheetNames } from "./recordRanges.ts";

/** What a case was on which day, by the column of the sheet Cases that holds the day. */
const states = [
  ["A", "lame"],
  ["N", "sound"],
] as const;

/** Each case twice, for the list that must know both when an animal was lame and since when it is sound. */
export const statesSheet = (cases: number): SheetPlan => ({
  name: sheetNames.states,
  write(sheet) {
    sheet.widths(23, 13, 10);
    sheet.put({ row: 0, column: 0 }, "States", "title");
    sheet.rowHeight(0, 28);
    sheet.put({ row: 1, column: 0 }, "Worked out from the sheet Cases; nothing is typed here.", "note");
    sheet.putRow({ row: headingRow, column: 0 }, ["Tag", "Day", "State"], "workedHeading");
    const bottom = headingRow + states.length * cases;
    sheet.dress({ top: firstRecord, left: 0, bottom, right: 0 }, "tag");
    sheet.dress({ top: firstRecord, left: 1, bottom, right: 1 }, "workedDate");
    states.forEach(([dayColumn, state], block) => {
      for (let place = 0; place < cases; place++) {
        const n = firstRecord + place + 1;
        const where = (content: string) => ({ formula: `IF(Cases!${dayColumn}${n}="","",${content})` });
        const row = firstRecord + block * cases + place;
        sheet.putRow({ row, column: 0 }, [`Cases!C${n}`, `Cases!${dayColumn}${n}`, `"${state}"`].map(where));
      }
    });
    sheet.freezeAt({ row: firstRecord, column: 0 });
  },
});
