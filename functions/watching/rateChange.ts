import { type RateChange, rateChange } from "../../src/core/watching/rateChange.ts";
import { about, defineFunction } from "../../src/definition/defineFunction.ts";
import { nothing, problem } from "../../src/definition/problemExamples.ts";
import { count, nonNegative } from "../../src/reading/numbers.ts";
import { one } from "../../src/reading/parameter.ts";
import { row } from "../../src/writing/result.ts";
import { confidenceChoice } from "../counting/gatherColumns.ts";
import { sources } from "../sources.ts";

const cases = count("new cases");
const days = nonNegative("sheep-days");

export const rateChangeFunction = defineFunction({
  name: "RATECHANGE",
  summary: "Whether new cases come faster or slower than before: rate after over rate before, with its range and p.",
  questions: ["did new cases slow down", "compare incidence before and after", "rate ratio"],
  notes: [
    "Below 1 is better. A range that holds 1 has not shown a change.",
    "p is how often chance alone brings a ratio at least this unlikely when nothing changed: 0.04 is 4 times in 100.",
    "With no case before there is no ratio and no upper limit; both are said in words. With none after, the ratio is 0.",
    "Exact, given the number of cases in all. In an outbreak cases come together; then the range is too narrow and p too small.",
  ],
  parameters: {
    cases_before: one(cases, "New cases before"),
    days_before: one(days, "Sheep-days before, as SHEEPDAYS gives"),
    cases_after: one(cases, "New cases after"),
    days_after: one(days, "Sheep-days after, as SHEEPDAYS gives"),
    confidence: confidenceChoice,
  },
  result: row<RateChange>(
    ["ratio", "rate", ({ ratio }) => (ratio === Infinity ? "no case before" : ratio)],
    ["low", "rate", ({ low }) => low],
    ["high", "rate", ({ high }) => (high === Infinity ? "no upper limit" : high)],
    ["p", "p value", ({ p }) => p],
  ),
  caution: undefined,
  sources: [sources.przyborowskiWilenski1940, sources.clopperPearson1934],
  compute: ({ cases_before, days_before, cases_after, days_after, confidence }) =>
    rateChange({ cases: cases_before, days: days_before }, { cases: cases_after, days: days_after }, confidence),
  examples: [
    {
      shows: "15 cases in 19,017 sheep-days before, 41 in 28,010 after",
      call: [15, 19_017, 41, 28_010],
      gives: [[about(1.855758658, 9), about(1.005684063, 9), about(3.609300311, 9), about(0.04085203, 8)]],
    },
    {
      shows: "No case before",
      call: [0, 10_000, 4, 10_000],
      gives: [["no case before", about(0.6601240194), "no upper limit", about(0.125)]],
    },
    { shows: "None after", call: [5, 10_000, 0, 10_000], gives: [[0, 0, about(1.0912791052), about(0.0625)]] },
    { call: [5, 0, 2, 10_000], gives: problem("days_before: 0 sheep-days give no rate; enter sheep-days above 0") },
    {
      call: [0, 10_000, 0, 10_000],
      gives: nothing("cases_before: there was no case before or after, so there is no ratio"),
    },
  ],
});
