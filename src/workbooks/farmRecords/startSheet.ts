import { cautions } from "../../../functions/cautions.ts";
import { showDay } from "../../cells/day.ts";
import { ewes, year } from "../inventedFlock/flockYear.ts";
import type { SheetPlan } from "../writing/authorWorkbook.ts";
import { writeStart } from "../writing/writeStart.ts";
import { sheetNames } from "./placedRecords.ts";

/** The first sheet: what this workbook is, and that its flock is invented. */
export const startSheet: SheetPlan = {
  name: sheetNames.start,
  write: (sheet) =>
    writeStart(sheet, {
      title: "Sheep foot health: a year of farm records",
      subtitle: '"What the functions make of records as they are kept"',
      invented: "This flock is invented. No animal, farm or medicine in it exists.",
      states: [],
      hasEditions: false,
      steps: [
        [
          sheetNames.settings,
          "The day everything is worked out for, the target, the sale and its tags. Change a yellow cell.",
        ],
        [sheetNames.gathers, "Each group at each gather: how many were lame, how many were looked at."],
        [
          sheetNames.cases,
          "Each lame animal that was caught: what was seen, what was done, and the dates that follow.",
        ],
        [sheetNames.answers, "The flock in figures: how many are lame, in which group, from what, against the target."],
        [
          sheetNames.lists,
          "The animals by tag: who must wait before sale, who must be looked at again, who was lame again.",
        ],
        [sheetNames.check, "The slips of the hand in the sheet Cases, row by row, and how to mend each."],
      ],
      care: [
        "Withdrawal days, doses and strengths here are made up.",
        cautions.withdrawal.words,
        cautions.carePlan.words,
      ],
      notes: [
        `${ewes} ewes and their lambs, ${showDay(year.first)} to ${showDay(year.last)}. Tags have country code 999, which no animal has.`,
        "The records hold the slips that real records hold: rows left blank, spaces after words, one lesion spelled several ways, numbers and dates kept as text, tags written in several forms, two lesions that nobody knows, and one treatment with its withdrawal days forgotten. The answers say what they made of each.",
        "A cell that ends in an error is meant to: it points at a record that must be mended by a person.",
      ],
    }),
};
