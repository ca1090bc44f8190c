import { prevalenceByGroupFunction } from "../../../functions/counting/prevalenceByGroup.ts";
import { gathers } from "../tables/gathers.ts";
import type { SheetPlan } from "../writing/authorWorkbook.ts";
import { sayWhenMissing } from "../writing/missingFunctions.ts";
import { dressColumns, placeList, writeList } from "../writing/placeList.ts";
import { writeTable } from "../writing/placeTable.ts";
import type { BookContent } from "./bookContent.ts";
import { firstRecord, headingRow, sheetNames } from "./bookSheets.ts";
import { placedGathers } from "./placedRecords.ts";

const byGroup = placeList(sheetNames.gathers, prevalenceByGroupFunction, {
  row: headingRow,
  column: gathers.keys.length + 1,
});

/** The gathers, with room for more, and beside them what they come to group by group. */
export const gathersSheet = ({ gathers: records }: BookContent): SheetPlan => ({
  name: sheetNames.gathers,
  write(sheet) {
    gathers.keys.forEach((key, column) => {
      sheet.columnLook(column, column, gathers.columns[key].look);
    });
    dressColumns(sheet, byGroup);
    [4, 24, 9, 9, 10, 10, 10].forEach((width, step) => {
      sheet.width(gathers.keys.length + step, width);
    });
    sheet.title("Gathers");
    sayWhenMissing(sheet, { row: 0, column: 1 });
    sheet.dress({ top: 1, left: 0, bottom: 2, right: gathers.keys.length - 1 }, "note");
    sheet.put(
      { row: 1, column: 0 },
      "One row for each group at each gather. Type in the next free row; the table has room.",
      "note",
    );
    sheet.put(
      { row: 2, column: 0 },
      { formula: 'IF(LEN(lame_from)=0,"","Lame is every sheep that scores "&lame_from&" or more (Settings).")' },
      "note",
    );
    sheet.rowHeight(headingRow, 34);
    writeTable(sheet, gathers, placedGathers, records, { dressed: false, widths: true });

    const { cell, above, column } = placedGathers;
    const filled = [`COUNTA(${cell("date")}:${cell("note")})>0`, "line"] as const;
    const next = [`AND(${cell("date")}="",${above("date")}<>"")`, "next"] as const;
    const more = `AND(ISNUMBER(${cell("lookedAt")}),ISNUMBER(${cell("lame")}),${cell("lame")}>${cell("lookedAt")})`;
    sheet.emphasize(column("date", "lookedAt"), filled, next);
    sheet.emphasize(column("lame"), [more, "strong"], filled, next);
    sheet.emphasize(column("note"), filled, next);

    writeList(sheet, byGroup, {
      question: "Group by group, in the year looked at",
      rows: 30,
      unless: ["SUM(LEN(year_looked_at))=0", "no gathers in the year"],
      formula: 'FOOT.PREVBY(year_group,year_lame,year_looked_at,0.95,"gathers",year_day)',
      strong: (answer) => `LEFT(${answer("group")},9)="all"`,
    });
    sheet.freezeAt({ row: firstRecord, column: 0 });
    sheet.protect();
    sheet.print({ sideways: true, repeat: [headingRow, headingRow] });
  },
});
