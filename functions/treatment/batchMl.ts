import { type Batch, batchMl } from "../../src/core/treatment/batchMl.ts";
import { defineFunction } from "../../src/definition/defineFunction.ts";
import { nothing, problem } from "../../src/definition/problemExamples.ts";
import { anyNumber, positive, share } from "../../src/reading/numbers.ts";
import { column, oneOr, oneOrNone } from "../../src/reading/parameter.ts";
import { row } from "../../src/writing/result.ts";
import { cautions } from "../cautions.ts";
import { sources } from "../sources.ts";
import { dosingParameters, roundingNote } from "./dosingParameters.ts";

export const batchMlFunction = defineFunction({
  name: "BATCHML",
  summary: "How much medicine a group needs: total ml with a spare, bottles, and the largest dose.",
  questions: [
    "how many bottles do I need",
    "total medicine for the group",
    "how much to fetch for 40 ewes",
    "how much medicine to buy",
  ],
  notes: [
    "The total is the sum of the single doses, each at the syringe's mark as DOSEML gives it, plus the spare.",
    roundingNote,
    "Bottles are whole bottles; blank when no bottle size is given.",
    "A row with a weight outside 1 to 200 kg is refused. Blank rows are left out.",
  ],
  parameters: {
    weights_kg: column(anyNumber("a weight from 1 to 200 kg"), "Weights in kg, one an animal"),
    ...dosingParameters,
    spare: oneOr(share, 0.05, "Share added for what is spilled or left in the syringe"),
    bottle_ml: oneOrNone(positive("ml in one bottle"), "ml in one bottle, to count the bottles"),
  },
  result: row<Batch>(
    ["total ml", "ml", ({ totalMl }) => totalMl],
    ["bottles", "count", ({ bottles }) => bottles],
    ["largest dose in ml", "ml", ({ largestMl }) => largestMl],
  ),
  caution: cautions.dosing,
  sources: [sources.practice],
  compute: ({ weights_kg, mg_per_kg, mg_per_ml, mark_ml, spare, bottle_ml }) =>
    batchMl(weights_kg, { mgPerKg: mg_per_kg, mgPerMl: mg_per_ml, markMl: mark_ml }, spare, bottle_ml),
  examples: [
    {
      shows: "Three ewes, one row blank, 5 % spare, 20 ml bottles",
      call: [[75, null, 60, 68.3], 20, 200, undefined, undefined, 20],
      gives: [[21.315, 2, 7.5]],
    },
    { shows: "No spare, no bottle", call: [[75, 60], 20, 200, 0.1, 0], gives: [[13.5, "", 7.5]] },
    {
      call: [[75, 7500], 20, 200],
      gives: problem("weights_kg, row 2: 7500 kg is outside 1 to 200 kg; enter the weight in kg"),
    },
    {
      call: [[75, "heavy"], 20, 200],
      gives: problem('weights_kg, row 2: "heavy" is not a number; enter a weight from 1 to 200 kg'),
    },
    {
      call: [[75], 20, 200, 0.1, 5],
      gives: problem("spare: 5 is above 1; enter a share from 0 to 1, such as 0.05 or 5%"),
    },
    { call: [[null, null], 20, 200], gives: nothing("weights_kg: there are no weights") },
  ],
});
