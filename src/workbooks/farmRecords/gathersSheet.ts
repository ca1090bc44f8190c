import { gatherHeadings, type TypedRow } from "../inventedFlock/asTyped.ts";
import type { SheetPlan } from "../writing/authorWorkbook.ts";
import { firstRecord, headingRow, recordArea, sheetNames } from "./recordRanges.ts";

const workedHeadings = ["Share lame", "Latest: group", "Latest: lame", "Latest: seen"];

/** The gathers as typed, with the share of each beside it, and the latest ones again for the answers. */
export const gathersSheet = (gathers: readonly TypedRow[]): SheetPlan => ({
  name: sheetNames.gathers,
  write(sheet) {
    sheet.widths(13, 24, 9, 9, 12, 24, 10, 10);
    sheet.put({ row: 0, column: 0 }, "Gathers", "title");
    sheet.rowHeight(0, 28);
    sheet.put({ row: 1, column: 0 }, "Typed in on the left; the pale green columns are worked out.", "note");
    sheet.rowHeight(headingRow, 32);
    sheet.putRow({ row: headingRow, column: 0 }, gatherHeadings, "heading");
    sheet.putRow({ row: headingRow, column: gatherHeadings.length }, workedHeadings, "workedHeading");
    const bottom = headingRow + gathers.length;
    sheet.dress({ top: firstRecord, left: 0, bottom, right: 0 }, "date");
    sheet.dress({ top: firstRecord, left: 4, bottom, right: 4 }, "workedShare");
    sheet.dress({ top: firstRecord, left: 5, bottom, right: 7 }, "worked");
    gathers.forEach((typed, place) => {
      const row = firstRecord + place;
      const n = row + 1;
      sheet.putRow({ row, column: 0 }, typed);
      sheet.put({ row, column: 4 }, { formula: `IF(D${n}="","",FOOT.FLOCKPREV(C${n},D${n}))` });
      const latest = ["B", "C", "D"].map((letter) => ({
        formula: `IF(A${n}="","",IF(A${n}>=latest_from,${letter}${n},""))`,
      }));
      sheet.putRow({ row, column: 5 }, latest);
    });
    sheet.table("Gathers", recordArea(gatherHeadings, gathers));
    sheet.freezeAt({ row: firstRecord, column: 0 });
    sheet.printWide();
  },
});
