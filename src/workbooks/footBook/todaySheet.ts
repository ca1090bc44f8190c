import { notSoundFunction } from "../../../functions/animals/notSound.ts";
import { repeatAnimalsFunction } from "../../../functions/animals/repeatAnimals.ts";
import { dueListFunction } from "../../../functions/dates/dueList.ts";
import { notClearFunction } from "../../../functions/dates/notClear.ts";
import { cases } from "../tables/cases.ts";
import type { SheetPlan } from "../writing/authorWorkbook.ts";
import { filledIn } from "../writing/filledIn.ts";
import { sayWhenMissing } from "../writing/missingFunctions.ts";
import { dressColumns, placeList, summaryOf, writeList } from "../writing/placeList.ts";
import { printedLists } from "../writing/printedLists.ts";
import { holdInDoubt, sheetNames } from "./bookSheets.ts";
import { lookedOrOver, lookingBack } from "./formulas.ts";

const headings = 6;
const rows = 1000;
/** A page of them. */
const printed = 34;

const notClear = placeList(sheetNames.today, notClearFunction, { row: headings, column: 0 });
const untreated = placeList(sheetNames.today, dueListFunction, { row: headings, column: 5 });
const due = placeList(sheetNames.today, dueListFunction, { row: headings, column: 10 });
const repeats = placeList(sheetNames.today, repeatAnimalsFunction, { row: headings, column: 15 });
const failures = placeList(sheetNames.today, notSoundFunction, { row: headings, column: 20 });

type Strong = (cell: (heading: string) => string) => string;

/** Lines are counted as far down as a list can grow; its first column, where it cannot, says how many more there are. */
const columnOf = (list: typeof due, heading: string): string => list.range(heading, cases.room);
const lines = (list: typeof due, heading: string): string => filledIn(columnOf(list, heading));
const words = (list: typeof due, heading: string, pattern: string): string =>
  `COUNTIF(${columnOf(list, heading)},"${pattern}")`;
/** What is overdue, and what cannot be read, in which row. */
const overdue: Strong = (cell) =>
  `ISNUMBER(SEARCH("overdue",${cell("state")}))+ISNUMBER(SEARCH(", row ",${cell("state")}))`;
const notKnown =
  (heading: string): Strong =>
  (cell) =>
    `LEFT(${cell(heading)},9)="not known"`;
const animals = (list: typeof due, heading: string): string => {
  const counted = lines(list, heading);
  return `${counted}&IF(${counted}=1," animal"," animals")`;
};

const lists = [
  {
    list: notClear,
    question: "Not clear: not for food yet",
    formula: 'FOOT.NOTCLEAR(as_of,case_tag,treated_on,withdrawal_days,"whole days",group_treated)',
    // Where a whole group was treated the first column names it: "every animal of group Lambs".
    widths: [32, 13, 9, 62],
    // A lost tag's own day may be known.
    strong: ((cell) => `LEN(${cell("why not known")})>0`) satisfies Strong,
    filled: "clear date",
    numbers: `COUNT(${columnOf(notClear, "days to wait")})&" waiting, "&${words(notClear, "clear date", "not known*")}&" not known"`,
  },
  {
    list: untreated,
    question: "To treat: seen lame, not treated yet",
    formula:
      'FOOT.DUELIST(as_of,case_tag,case_day,IF(LEN(treated_on)>0,"yes",IF(LEN(sound_on)>0,sound_on,left_on)),0,treated_on,written_score)',
    widths: [18, 12, 7, 34],
    strong: overdue,
    filled: "due",
    numbers: `${animals(untreated, "due")}&", longest waiting first, then the worst"`,
  },
  {
    list: due,
    question: "To look at again: overdue and due",
    formula: `FOOT.DUELIST(as_of,case_tag,look_due,${lookedOrOver()},ahead_days,treated_on)`,
    widths: [18, 12, 7, 34],
    strong: overdue,
    filled: "due",
    numbers: `${words(due, "state", "*overdue*")}&" overdue, "&${lines(due, "due")}&" in all"`,
  },
  {
    list: repeats,
    question: "Lame again and again in the year",
    formula: "FOOT.REPEATS(case_tag,case_day,repeat_from,gap_days,year_from,as_of)",
    // The first column holds the words of an empty list; beside a tag that is not known stands the reason.
    widths: [28, 11, 44, 13],
    strong: notKnown("cases"),
    filled: "cases",
    numbers: animals(repeats, "cases"),
  },
  {
    list: failures,
    question: "Treated twice or more, and not sound",
    formula:
      'FOOT.NOTSOUND(as_of,case_tag,IF(LEN(group_treated)=0,treated_on,""),written_lesion,written_medicine,sound_on,left_on,2,year_from)',
    widths: [34, 11, 12, 12, 46, 32],
    strong: notKnown("treatments"),
    filled: "treatments",
    numbers: `${animals(failures, "treatments")}&", the most frequent lesion and medicine first; ask your vet"`,
  },
] as const;

/** What needs doing today: lists, each as long as it comes. */
export const todaySheet: SheetPlan = {
  name: sheetNames.today,
  write(sheet) {
    for (const { list } of lists) dressColumns(sheet, list);
    sheet.widths(...lists.flatMap(({ widths }) => [...widths, 3]).slice(0, -1));
    sheet.dress({ top: 0, left: 0, bottom: headings - 1, right: failures.at.column + 5 }, "note");
    sheet.title("Today");
    sayWhenMissing(sheet, { row: 0, column: untreated.at.column });
    sheet.put({ row: 1, column: 0 }, { formula: "as_of" }, "figureDate");
    sheet.put({ row: 1, column: 1 }, { formula: 'IF(farm_name="","",farm_name)' }, "subtitle");
    sheet.put({ row: 1, column: untreated.at.column }, { formula: lookingBack, array: true }, "strong");
    sheet.put({ row: 2, column: 0 }, `Where a list names a row, it is a row of the sheet Cases. ${holdInDoubt}`);
    for (const { list, question, formula, strong, filled, numbers } of lists) {
      const summary = summaryOf(sheet.edition, list, { filled, numbers, room: rows });
      sheet.put({ row: 3, column: list.at.column }, { formula: summary });
      writeList(sheet, list, {
        question,
        rows,
        formula,
        strong,
      });
    }
    sheet.freezeAt({ row: headings + 1, column: 0 });
    for (const { at } of [untreated, repeats, failures]) sheet.newPageAt(at.column);
    sheet.protect();
    const upTo = printedLists(
      sheet,
      lists.map(({ list }) => list),
      printed,
    );
    sheet.print({ sideways: true, repeat: [headings - 1, headings], across: 0, scale: 74, ...(upTo && { upTo }) });
  },
};
