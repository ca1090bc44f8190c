import { cautions } from "../../../functions/cautions.ts";
import { showDay } from "../../cells/day.ts";
import { ewes, year } from "../inventedFlock/flockYear.ts";
import type { SheetPlan } from "../writing/authorWorkbook.ts";
import { sheetNames } from "./placedRecords.ts";

const pages: readonly (readonly [string, string])[] = [
  [
    sheetNames.settings,
    "The day everything is worked out for, the target, the sale and its tags. Change a yellow cell.",
  ],
  [sheetNames.gathers, "Each group at each gather: how many were lame, how many were looked at."],
  [sheetNames.cases, "Each lame animal that was caught: what was seen, what was done, and the dates that follow."],
  [sheetNames.answers, "The flock in figures: how many are lame, in which group, from what, against the target."],
  [sheetNames.lists, "The animals by tag: who must wait before sale, who must be looked at again, who was lame again."],
  [sheetNames.check, "The slips of the hand in the sheet Cases, row by row, and how to mend each."],
];

/** What there is to say, with the lines it takes in a column of this width. */
const paragraphs: readonly (readonly [string, number])[] = [
  [
    `${ewes} ewes and their lambs, ${showDay(year.first)} to ${showDay(year.last)}. Tags have country code 999, which no animal has.`,
    2,
  ],
  [
    "The records hold the slips that real records hold: rows left blank, spaces after words, one lesion spelled several ways, numbers and dates kept as text, tags written in several forms, two lesions that nobody knows, and one treatment with its withdrawal days forgotten. The answers say what they made of each.",
    4,
  ],
  ["A cell that ends in an error is meant to: it points at a record that must be mended by a person.", 1],
];

const careLines = [
  "Withdrawal days, doses and strengths here are made up.",
  cautions.withdrawal.words,
  cautions.carePlan.words,
];

const lineHeight = 15;
/** Letters that fit in a line of the column of words. */
const lineLength = 90;

/** The first sheet: what this workbook is, and that its flock is invented. */
export const startSheet: SheetPlan = {
  name: sheetNames.start,
  write(sheet) {
    sheet.widths(16, 90);
    sheet.put({ row: 0, column: 0 }, "Sheep foot health: a year of farm records", "title");
    sheet.rowHeight(0, 28);
    sheet.put({ row: 1, column: 0 }, "This flock is invented. No animal, farm or medicine in it exists.", "subtitle");
    paragraphs.forEach(([words, lines], index) => {
      sheet.put({ row: 3 + index, column: 1 }, words, "words");
      sheet.rowHeight(3 + index, lines * lineHeight);
    });
    const firstPage = 4 + paragraphs.length;
    pages.forEach(([name, words], index) => {
      sheet.put({ row: firstPage + index, column: 0 }, name, "strong");
      sheet.put({ row: firstPage + index, column: 1 }, words, "words");
    });
    const care = firstPage + pages.length + 1;
    sheet.put({ row: care, column: 0 }, "Care", "strong");
    careLines.forEach((words, index) => {
      sheet.put({ row: care + index, column: 1 }, words, "words");
      sheet.rowHeight(care + index, Math.ceil(words.length / lineLength) * lineHeight);
    });
    sheet.put({ row: care + careLines.length + 1, column: 1 }, { formula: "FOOT.ABOUT()" }, "note");
    sheet.printWide();
  },
};
