import { repeatAnimalsFunction } from "../../../functions/animals/repeatAnimals.ts";
import { dueListFunction } from "../../../functions/dates/dueList.ts";
import { notClearFunction } from "../../../functions/dates/notClear.ts";
import { cases } from "../tables/cases.ts";
import type { SheetPlan } from "../writing/authorWorkbook.ts";
import { dressColumns, placeList, writeList } from "../writing/placeList.ts";
import { firstRecord, holdInDoubt, sheetNames } from "./bookSheets.ts";
import { lameOn, lookedOn, orSeeProblems, untilAsOf } from "./formulas.ts";
import { besideCases } from "./placedRecords.ts";

const headings = 6;
const rows = 1000;

const notClear = placeList(sheetNames.today, notClearFunction, { row: headings, column: 0 });
const due = placeList(sheetNames.today, dueListFunction, { row: headings, column: 5 });
const repeats = placeList(sheetNames.today, repeatAnimalsFunction, { row: headings, column: 10 });

type Strong = (cell: (heading: string) => string) => string;

const lists = [
  {
    list: notClear,
    question: "Not clear: not for food yet",
    formula: "FOOT.NOTCLEAR(as_of,Cases[Tag],Cases[Treated],Cases[Withdrawal days])",
    widths: [20, 13, 9, 36],
    strong: ((cell) => `LEFT(${cell("clear date")},9)="not known"`) satisfies Strong,
  },
  {
    list: due,
    question: "To look at again: overdue and due",
    formula: `FOOT.DUELIST(as_of,Cases[Tag],${besideCases.range("lookAgain")},${lookedOn},ahead_days)`,
    widths: [20, 13, 7, 18],
    strong: ((cell) => `ISNUMBER(SEARCH("overdue",${cell("state")}))`) satisfies Strong,
  },
  {
    list: repeats,
    question: "Lame again and again in the year",
    formula: `FOOT.REPEATS(${untilAsOf("Cases[Tag]", lameOn)},${untilAsOf(lameOn)},repeat_from,gap_days,year_from,as_of)`,
    widths: [20, 8, 13, 13],
    strong: undefined,
  },
] as const;

/** What needs doing today: three lists, each as long as it comes. */
export const todaySheet: SheetPlan = {
  name: sheetNames.today,
  write(sheet) {
    for (const { list } of lists) dressColumns(sheet, list);
    sheet.widths(...lists.flatMap(({ widths }) => [...widths, 3]).slice(0, -1));
    sheet.dress({ top: 0, left: 0, bottom: headings - 1, right: 13 }, "note");
    sheet.title("Today");
    sheet.put({ row: 1, column: 0 }, { formula: "as_of" }, "figureDate");
    sheet.put({ row: 1, column: 1 }, { formula: 'IF(farm_name="","",farm_name)' }, "subtitle");
    const numbers = (range: string, what: string): string => `COUNT(${range})&" ${what}"`;
    const words = (range: string, pattern: string): string => `COUNTIF(${range},"${pattern}")`;
    sheet.put(
      { row: 2, column: 0 },
      `Where a list names a row, row 1 is the first record: row ${firstRecord + 1} of the sheet Cases. ${holdInDoubt}`,
    );
    const counts = [
      [
        notClear,
        `${numbers(notClear.range("days to wait", rows), "waiting, ")}&${words(notClear.range("clear date", rows), "not known*")}&" not known"`,
      ],
      [
        due,
        `${words(due.range("state", rows), "*overdue*")}&" overdue, "&${numbers(due.range("days", rows), "in all")}`,
      ],
      [repeats, numbers(repeats.range("cases", rows), "animals")],
    ] as const;
    for (const [{ at }, formula] of counts) sheet.put({ row: 3, column: at.column }, { formula });
    for (const { list, question, formula, strong } of lists)
      writeList(sheet, list, {
        question,
        rows,
        longest: cases.room,
        formula: orSeeProblems(formula),
        ...(strong === undefined ? {} : { strong }),
      });
    sheet.freezeAt({ row: headings + 1, column: 0 });
    sheet.protect();
    sheet.print({ sideways: true, repeat: [headings - 1, headings] });
  },
};
