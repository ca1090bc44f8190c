import { hundredSheepYears, newCaseRate, type Rate } from "../../src/core/watching/newCaseRate.ts";
import { about, defineFunction } from "../../src/definition/defineFunction.ts";
import { nothing, problem } from "../../src/definition/problemExamples.ts";
import { count, nonNegative, positive } from "../../src/reading/numbers.ts";
import { one, oneOr } from "../../src/reading/parameter.ts";
import { row } from "../../src/writing/result.ts";
import { confidenceChoice } from "../counting/gatherColumns.ts";
import { sources } from "../sources.ts";

export const newCaseRateFunction = defineFunction({
  name: "NEWCASERATE",
  summary: "How fast new cases come, for the sheep that were there: cases in 100 sheep-years, with their range.",
  questions: ["new cases per 100 ewes a year", "incidence of lameness", "how fast do sheep go lame"],
  notes: [
    "Without per the rate is for 100 sheep-years (36525 sheep-days). For 1,000 sheep-days enter 1000, for 100 sheep-weeks 700.",
    "Sheep-days come from SHEEPDAYS, new cases from CASETABLE: one sheep treated twice for one case is one case.",
    "The range is exact for cases that come one by one. In an outbreak they come together, and the true range is wider.",
  ],
  parameters: {
    new_cases: one(count("new cases"), "New cases in the period"),
    sheep_days: one(nonNegative("sheep-days"), "Sheep-days in the period, as SHEEPDAYS gives"),
    per: oneOr(positive("sheep-days"), hundredSheepYears, "Sheep-days that the rate is for: 36525 is 100 sheep-years"),
    confidence: confidenceChoice,
  },
  result: row<Rate>(
    ["rate", "rate", ({ rate }) => rate],
    ["low", "rate", ({ low }) => low],
    ["high", "rate", ({ high }) => high],
  ),
  caution: undefined,
  sources: [sources.garwood1936],
  compute: ({ new_cases, sheep_days, per, confidence }) => newCaseRate(new_cases, sheep_days, confidence, per),
  examples: [
    {
      shows: "11 new cases in 800 sheep-years, for 100 sheep-years",
      call: [11, 292_200],
      gives: [[about(1.375), about(0.6863950459), about(2.460254814, 9)]],
    },
    {
      shows: "No case in 1,000 sheep-days, for as many: up to 3.7 may still be the rule",
      call: [0, 1000, 1000],
      gives: [[0, 0, about(3.688879, 6)]],
    },
    {
      call: [1.5, 1000],
      gives: problem("new_cases: 1.5 is not a whole number; enter a whole number of new cases, 0 or more"),
    },
    { call: [3, 1000, 0], gives: problem("per: 0 is not above 0; enter sheep-days, above 0") },
    { call: [0, 0], gives: nothing("sheep_days: 0 sheep-days give no rate") },
  ],
});
