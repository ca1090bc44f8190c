import { Doubt } from "../../src/cells/doubt.ts";
import { Problem } from "../../src/cells/problem.ts";
import { doseMl } from "../../src/core/treatment/doseMl.ts";
import { defineFunction } from "../../src/definition/defineFunction.ts";
import { problem } from "../../src/definition/problemExamples.ts";
import { anyNumber } from "../../src/reading/numbers.ts";
import { doubtColumn } from "../../src/reading/parameter.ts";
import { alongside } from "../../src/writing/result.ts";
import { cautions } from "../cautions.ts";
import { sources } from "../sources.ts";
import { dosingParameters, roundingNote } from "./dosingParameters.ts";

export const doseMlFunction = defineFunction({
  name: "DOSEML",
  summary: "How many ml an animal gets, at the mark of the syringe.",
  questions: ["how many ml to inject", "dose for a ewe of 75 kg", "how much medicine by weight"],
  notes: [
    "Weight × mg per kg ÷ mg per ml. A strength of 20 % is 200 mg per ml.",
    roundingNote,
    "A weight outside 1 to 200 kg is refused, and so is a dose that the nearest mark misses by more than a fifth, or one of more than 60 ml.",
    "A column of weights gives a column. Blank rows stay blank. A row with a weight that cannot be read, or is refused, has words for a dose, and costs no other animal its own.",
  ],
  parameters: {
    weight_kg: doubtColumn(anyNumber("a weight from 1 to 200 kg"), "Weight in kg (a cell or a column)", {
      faults: "keep in rows",
    }),
    ...dosingParameters,
  },
  result: alongside("dose in ml", "ml"),
  caution: cautions.dosing,
  sources: [sources.practice],
  compute: ({ weight_kg, mg_per_kg, mg_per_ml, mark_ml }, origin) => {
    const doseFor = doseMl({ mgPerKg: mg_per_kg, mgPerMl: mg_per_ml, markMl: mark_ml }, "weight_kg");
    return weight_kg.map((weight) => {
      if (weight instanceof Doubt) return weight.sentence;
      try {
        return doseFor(weight);
      } catch (error) {
        if (error instanceof Problem && !origin.single()) return error.sentence;
        throw error;
      }
    });
  },
  examples: [
    { shows: "75 kg, 20 mg per kg, 200 mg per ml", call: [75, 20, 200], gives: 7.5 },
    { shows: "A syringe with half-ml marks: 6.83 ml goes to the nearest", call: [68.3, 20, 200, 0.5], gives: 7 },
    {
      shows: "A column of weights with a blank row",
      call: [[3, null, 61.2, 80.5], 20, 200],
      gives: [[0.3], [""], [6.1], [8.1]],
    },
    { call: [750, 20, 200], gives: problem("weight_kg: 750 kg is outside 1 to 200 kg; enter the weight in kg") },
    {
      shows: "A weight that cannot be costs only its own row",
      call: [[75, 0.6, "70 kg"], 20, 200],
      gives: [
        [7.5],
        ["0.6 kg is outside 1 to 200 kg; enter the weight in kg"],
        ['"70 kg" is not a number; enter a weight from 1 to 200 kg'],
      ],
    },
    {
      call: [75, 20, 0.2],
      gives: problem(
        "weight_kg: 7500 ml for an animal of 75 kg cannot be right; look at mg_per_kg and mg_per_ml again (a strength of 20 % is 200 mg in each ml)",
      ),
    },
    {
      call: [4, 2, 200, 0.1],
      gives: problem(
        "weight_kg: 4 kg asks for 0.04 ml, and the nearest mark is 0 ml; take a finer syringe and enter its mark in mark_ml",
      ),
    },
    {
      shows: "The nearest mark would be twice the dose",
      call: [5, 2, 200, 0.1],
      gives: problem(
        "weight_kg: 5 kg asks for 0.05 ml, and the nearest mark is 0.1 ml; take a finer syringe and enter its mark in mark_ml",
      ),
    },
    {
      call: [75, 20, 200, 0.125],
      gives: problem(
        "mark_ml: 0.125 ml is not the mark of a syringe; enter 0.01 to 10 ml, such as 0.1, 0.2, 0.25 or 0.5",
      ),
    },
    {
      call: [75, "20 mg", 200],
      gives: problem('mg_per_kg: "20 mg" is not a number; enter mg of active substance for each kg, above 0'),
    },
  ],
});
