import type { SheetPlan } from "../authoring/authorWorkbook.ts";
import type { SheetAuthor } from "../authoring/sheetAuthor.ts";
import type { PlacedAnswer } from "./placedAnswers.ts";
import { sheetNames } from "./recordRanges.ts";

/** The flock in figures: single answers first, then short tables. */
export const answersSheet = (placed: readonly PlacedAnswer[]): SheetPlan => ({
  name: sheetNames.answers,
  write(sheet) {
    sheet.widths(38, 13, 13, 13, 13, 13);
    title(sheet, "Answers", "Worked out from the sheets Gathers and Cases for the day in Settings.");
    for (const answer of placed.filter(isOn(sheetNames.answers))) writeAnswer(sheet, answer);
    sheet.freezeAt({ row: 2, column: 0 });
    sheet.printWide();
  },
});

/** Animals by tag, list beside list. */
export const listsSheet = (placed: readonly PlacedAnswer[]): SheetPlan => ({
  name: sheetNames.lists,
  write(sheet) {
    const lists = placed.filter(isOn(sheetNames.lists));
    sheet.widths(...lists.flatMap(({ gives }) => [...gives.result.headings.map(widthOf), 3]));
    title(sheet, "Lists", "Each list grows and shrinks with the records. Leave the cells under it free.");
    for (const answer of lists) writeAnswer(sheet, answer);
    sheet.freezeAt({ row: 4, column: 0 });
    sheet.printWide();
  },
});

const isOn =
  (name: string) =>
  ({ sheet }: PlacedAnswer): boolean =>
    sheet === name;

// Tags and reasons are long, numbers are short.
const widthOf = (heading: string): number =>
  heading === "tag" ? 21 : ["answer", "state", "why"].includes(heading) ? 27 : 14;

function title(sheet: SheetAuthor, words: string, note: string): void {
  sheet.put({ row: 0, column: 0 }, words, "title");
  sheet.rowHeight(0, 28);
  sheet.put({ row: 1, column: 0 }, note, "note");
}

function writeAnswer(sheet: SheetAuthor, { question, heading, at, formula, gives }: PlacedAnswer): void {
  const isTable = gives.result.shape === "table";
  sheet.put(heading, question, isTable ? "question" : "label");
  const across = gives.result.headings.length;
  if (isTable)
    sheet.dress({ top: at.row, left: at.column, bottom: at.row, right: at.column + across - 1 }, "workedHeading");
  sheet.put(at, { formula });
}
