import { prevalenceByGroupFunction } from "../../../functions/counting/prevalenceByGroup.ts";
import type { SheetPlan } from "../writing/authorWorkbook.ts";
import type { Look } from "../writing/looks.ts";
import { listLooks, writeList } from "../writing/writeList.ts";
import type { BookContent } from "./bookContent.ts";
import { firstRecord, gatherHeadings, headingRow, room, sheetNames } from "./bookTables.ts";
import { orSeeProblems } from "./formulas.ts";
import { writeRecords } from "./writeRecords.ts";

const typedLooks: readonly Look[] = ["typedDate", "typed", "typedCount", "typedCount", "typed"];
const byGroupColumn = gatherHeadings.length + 1;

const inYear = (column: string): string =>
  `IF(LEN(${column})=0,"",IF(ISNUMBER(Gathers[Date])*(Gathers[Date]<year_from),"",${column}))`;

/** The gathers, with room for more, and beside them what they come to group by group. */
export const gathersSheet = ({ gathers }: BookContent): SheetPlan => ({
  name: sheetNames.gathers,
  write(sheet) {
    typedLooks.forEach((look, column) => {
      sheet.columnLook(column, column, look);
    });
    listLooks(prevalenceByGroupFunction).forEach((look, step) => {
      sheet.columnLook(byGroupColumn + step, byGroupColumn + step, look);
    });
    sheet.widths(14, 24, 11, 9, 24, 4, 24, 9, 9, 10, 10, 10);
    sheet.title("Gathers");
    sheet.dress({ top: 1, left: 0, bottom: 2, right: gatherHeadings.length - 1 }, "note");
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
    const rows = writeRecords(sheet, {
      name: "Gathers",
      headings: gatherHeadings,
      looks: typedLooks,
      records: gathers,
      room: room.gathers,
    });
    const column = (place: number) => ({ ...rows, left: place, right: place });
    sheet.accept(column(0), {
      of: { date: ["DATE(1990,1,1)", "as_of"] },
      words: "Type the day of the gather, such as 2026-03-14; not a day to come.",
    });
    sheet.accept(column(1), {
      of: { list: "group_list" },
      words: "This group is not in the list on the sheet Settings. Use it all the same?",
      lenient: true,
    });
    sheet.accept(column(2), {
      of: { whole: ["0", "100000"] },
      words: "Type how many sheep were looked at, as a whole number.",
    });
    sheet.accept(column(3), {
      of: { whole: ["0", `IF($C${firstRecord + 1}="",100000,$C${firstRecord + 1})`] },
      words: "Type how many of them were lame: a whole number, not more than were looked at.",
    });
    const n = firstRecord + 1;
    const filled = [`COUNTA($A${n}:$E${n})>0`, "line"] as const;
    const next = [`AND($A${n}="",$A${n - 1}<>"")`, "next"] as const;
    sheet.emphasize({ ...rows, right: 2 }, filled, next);
    sheet.emphasize(column(3), [`AND(ISNUMBER($C${n}),ISNUMBER($D${n}),$D${n}>$C${n})`, "strong"], filled, next);
    sheet.emphasize(column(4), filled, next);

    writeList(sheet, {
      question: "Group by group, in the year looked at",
      row: headingRow,
      column: byGroupColumn,
      rows: 60,
      gives: prevalenceByGroupFunction,
      formula: `IF(SUM((LEN(${inYear("Gathers[Looked at]")})>0)*1)=0,"no gathers in the year",${orSeeProblems(
        `FOOT.PREVBY(${inYear("Gathers[Group]")},${inYear("Gathers[Lame]")},${inYear("Gathers[Looked at]")})`,
      )})`,
      strong: `LEFT($G${n},9)="all"`,
    });
    sheet.freezeAt({ row: firstRecord, column: 0 });
    sheet.protect();
    sheet.print({
      sideways: true,
      repeat: [headingRow, headingRow],
    });
  },
});
