import { isoText } from "../../cells/day.ts";
import { year } from "../inventedFlock/flockYear.ts";
import { inventedFlock } from "../inventedFlock/inventedFlock.ts";
import { saleList } from "../inventedFlock/saleList.ts";
import { seededRandom } from "../inventedFlock/seededRandom.ts";
import type { WorkbookPlan } from "../writing/authorWorkbook.ts";
import { answersSheet, checkSheet, listsSheet } from "./answerSheets.ts";
import { answersFor } from "./answers.ts";
import { typedCases, typedGathers } from "./asTyped.ts";
import { casesSheet } from "./casesSheet.ts";
import { gathersSheet } from "./gathersSheet.ts";
import { type PlacedAnswer, placedAnswers } from "./placedAnswers.ts";
import { placedRecords } from "./placedRecords.ts";
import { latestGathersFrom, settingsSheet } from "./settingsSheet.ts";
import { startSheet } from "./startSheet.ts";

export interface FarmRecords {
  readonly plan: WorkbookPlan;
  /** Where the plan's answers will stand. */
  readonly answers: readonly PlacedAnswer[];
}

/**
 * The workbook of farm records: an invented year, its records with the slips of the hand, and the answers.
 *
 * @param seed - the same seed gives the same workbook
 */
export function farmRecords(seed: number): FarmRecords {
  const flock = inventedFlock(seed);
  const hand = seededRandom(seed + 1);
  const gathers = typedGathers(flock.gathers, hand);
  const cases = typedCases(flock.cases, hand);
  const placed = placedRecords({ cases: cases.length, gathers: gathers.length });
  const answers = placedAnswers(answersFor(placed));
  const flockNow = flock.animals.filter(({ from, until }) => from <= latestGathersFrom && latestGathersFrom <= until);
  return {
    answers,
    plan: {
      title: "Sheep foot health: a year of farm records",
      description: "An invented flock. No animal, farm or medicine in it exists.",
      made: isoText(year.last),
      sheets: [
        startSheet,
        settingsSheet(saleList(flock), flockNow.length),
        gathersSheet(gathers, placed),
        casesSheet(cases, placed),
        answersSheet(answers),
        listsSheet(answers),
        checkSheet(answers),
      ],
    },
  };
}
