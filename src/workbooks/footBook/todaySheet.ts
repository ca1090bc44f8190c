import { repeatAnimalsFunction } from "../../../functions/animals/repeatAnimals.ts";
import { dueListFunction } from "../../../functions/dates/dueList.ts";
import { notClearFunction } from "../../../functions/dates/notClear.ts";
import type { SheetPlan } from "../writing/authorWorkbook.ts";
import { listLooks, writeList } from "../writing/writeList.ts";
import { firstRecord, holdInDoubt, room, sheetNames } from "./bookTables.ts";
import { lameOn, lookedOn, orSeeProblems, untilAsOf, workedColumn } from "./formulas.ts";

const headings = 6;
const rows = 1000;
const lists = [
  {
    question: "Not clear: not for food yet",
    column: 0,
    gives: notClearFunction,
    formula: "FOOT.NOTCLEAR(as_of,Cases[Tag],Cases[Treated],Cases[Withdrawal days])",
    widths: [20, 13, 9, 36],
    strong: `LEFT($B${headings + 2},9)="not known"`,
  },
  {
    question: "To look at again: overdue and due",
    column: 5,
    gives: dueListFunction,
    formula: `FOOT.DUELIST(as_of,Cases[Tag],${workedColumn("lookAgain")},${lookedOn},ahead_days)`,
    widths: [20, 13, 7, 18],
    strong: `ISNUMBER(SEARCH("overdue",$I${headings + 2}))`,
  },
  {
    question: "Lame again and again in the year",
    column: 10,
    gives: repeatAnimalsFunction,
    formula: `FOOT.REPEATS(${untilAsOf("Cases[Tag]", lameOn)},${untilAsOf(lameOn)},repeat_from,gap_days,year_from,as_of)`,
    widths: [20, 8, 13, 13],
    strong: undefined,
  },
] as const;

/** What needs doing today: three lists, each as long as it comes. */
export const todaySheet: SheetPlan = {
  name: sheetNames.today,
  write(sheet) {
    for (const { column, gives } of lists) {
      listLooks(gives).forEach((look, step) => {
        sheet.columnLook(column + step, column + step, look);
      });
    }
    sheet.widths(...lists.flatMap(({ widths }) => [...widths, 3]).slice(0, -1));
    sheet.dress({ top: 0, left: 0, bottom: headings - 1, right: 13 }, "note");
    sheet.title("Today");
    sheet.put({ row: 1, column: 0 }, { formula: "as_of" }, "figureDate");
    sheet.put({ row: 1, column: 1 }, { formula: 'IF(farm_name="","",farm_name)' }, "subtitle");
    const last = headings + rows + 1;
    const count = (column: string, what: string): string =>
      `COUNT($${column}$${headings + 2}:$${column}$${last})&" ${what}"`;
    sheet.put(
      { row: 2, column: 0 },
      `Where a list names a row, row 1 is the first record: row ${firstRecord + 1} of the sheet Cases. ${holdInDoubt}`,
    );
    sheet.put(
      { row: 3, column: 0 },
      { formula: `${count("C", "waiting, ")}&COUNTIF($B$${headings + 2}:$B$${last},"not known*")&" not known"` },
    );
    sheet.put(
      { row: 3, column: 5 },
      { formula: `COUNTIF($I$${headings + 2}:$I$${last},"*overdue*")&" overdue, "&${count("H", "in all")}` },
    );
    sheet.put({ row: 3, column: 10 }, { formula: count("L", "animals") });
    for (const { strong, formula, ...list } of lists) {
      const emphasis = strong === undefined ? {} : { strong };
      writeList(sheet, {
        ...list,
        ...emphasis,
        row: headings,
        rows,
        longest: room.cases,
        formula: orSeeProblems(formula),
      });
    }
    sheet.freezeAt({ row: headings + 1, column: 0 });
    sheet.protect();
    sheet.print({
      sideways: true,
      repeat: [headings - 1, headings],
    });
  },
};
