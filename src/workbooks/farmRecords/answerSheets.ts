import type { SheetPlan } from "../writing/authorWorkbook.ts";
import type { SheetAuthor } from "../writing/sheetAuthor.ts";
import type { PlacedAnswer } from "./placedAnswers.ts";
import { sheetNames } from "./placedRecords.ts";

/** The flock in figures: single answers first, then short tables. */
export const answersSheet = (placed: readonly PlacedAnswer[]): SheetPlan => ({
  name: sheetNames.answers,
  write(sheet) {
    sheet.widths(38, 15, 15, 15, 15, 15);
    title(sheet, "Answers", "Worked out from the sheets Gathers and Cases for the day in Settings.");
    for (const answer of placed.filter(isOn(sheetNames.answers))) writeAnswer(sheet, answer);
    sheet.freezeAt({ row: 2, column: 0 });
    sheet.print({ sideways: true });
  },
});

/** Animals by tag, list beside list. */
export const listsSheet = (placed: readonly PlacedAnswer[]): SheetPlan => ({
  name: sheetNames.lists,
  write(sheet) {
    const lists = placed.filter(isOn(sheetNames.lists));
    sheet.widths(...lists.flatMap(({ gives }) => [...gives.result.headings.map(widthOf), 3]));
    title(sheet, "Lists", "Each list grows and shrinks with the records. Leave the cells under it free.");
    for (const answer of lists) {
      writeAnswer(sheet, answer);
      if (answer.heading.column > 0) sheet.newPageAt(answer.heading.column);
    }
    sheet.freezeAt({ row: 5, column: 0 });
    sheet.print({ sideways: true, repeat: [3, 4], across: 0 });
  },
});

/** The records looked through for slips of the hand. */
export const checkSheet = (placed: readonly PlacedAnswer[]): SheetPlan => ({
  name: sheetNames.check,
  write(sheet) {
    sheet.widths(8, 20, 62, 70);
    title(sheet, "Record check", "Rows here are rows of the sheet Cases. Nothing is changed; mend it there.");
    for (const answer of placed.filter(isOn(sheetNames.check))) writeAnswer(sheet, answer);
    sheet.freezeAt({ row: 5, column: 0 });
    sheet.print({ sideways: true, repeat: [3, 4] });
  },
});

const isOn =
  (name: string) =>
  ({ sheet }: PlacedAnswer): boolean =>
    sheet === name;

// Tags and reasons are long, numbers are short.
const widths: Readonly<Record<string, number>> = { tag: 21, answer: 22, state: 18, why: 66, "why not known": 36 };
const widthOf = (heading: string): number => widths[heading] ?? 14;

function title(sheet: SheetAuthor, words: string, note: string): void {
  sheet.title(words);
  sheet.put({ row: 1, column: 0 }, note, "note");
}

function writeAnswer(sheet: SheetAuthor, { question, heading, at, names, formula, gives }: PlacedAnswer): void {
  const { headings, shape } = gives.result;
  sheet.put(heading, question, names ? "question" : "label");
  if (names) {
    gives.result.formats.forEach((format, step) => {
      const place = { row: names.row, column: names.column + step };
      sheet.put(place, null, format === "text" ? "workedHeading" : "workedHeadingRight");
    });
    if (shape !== "table") sheet.putRow(names, headings);
  }
  sheet.put(at, { formula });
}
