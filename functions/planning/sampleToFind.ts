import { sampleToFindText } from "../../src/core/planning/sampleToFindText.ts";
import { defineFunction } from "../../src/definition/defineFunction.ts";
import { problem } from "../../src/definition/problemExamples.ts";
import { confidence } from "../../src/reading/numbers.ts";
import { oneOr } from "../../src/reading/parameter.ts";
import { single } from "../../src/writing/result.ts";
import { sources } from "../sources.ts";
import { findingNotes, findingParameters } from "./findingParameters.ts";

export const sampleToFindFunction = defineFunction({
  name: "SAMPLETOFIND",
  summary: "How many sheep to look at to find at least one lame, if the flock has as many as you name.",
  questions: [
    "how many sheep to check to find footrot",
    "sample size to detect disease",
    "how many to look at before buying",
  ],
  notes: [
    ...findingNotes,
    "When even the whole flock is not enough it says so in words, with the chance that the whole flock gives.",
    "For a flock without known size enter a large number, such as 1000000.",
  ],
  parameters: {
    flock_size: findingParameters.flock_size,
    design_prevalence: findingParameters.design_prevalence,
    confidence: oneOr(confidence, 0.95, "Wanted chance of finding at least one: 0.95 is 95 in 100"),
    sensitivity: findingParameters.sensitivity,
    method: findingParameters.method,
  },
  result: single("sheep to look at", "count"),
  caution: undefined,
  sources: [sources.cannonRoe1982, sources.cameronBaldock1998, sources.macDiarmid1988],
  compute: ({ flock_size, design_prevalence, confidence, sensitivity, method }) =>
    sampleToFindText({ flockSize: flock_size, designPrevalence: design_prevalence, confidence, sensitivity, method }),
  examples: [
    { shows: "5 % lame in a flock of 300", call: [300, 0.05], gives: 54 },
    { shows: "1 % lame in a flock of 1,000", call: [1000, 0.01], gives: 258 },
    { shows: "A very large flock, 2 % lame", call: [1_000_000, 0.02], gives: 149 },
    { shows: "A look that finds 8 of 10 lame sheep", call: [300, 0.05, 0.95, 0.8], gives: 67 },
    { shows: "The same by the usual approximation", call: [300, 0.05, 0.95, 0.8, "formula"], gives: 68 },
    {
      shows: "Even the whole flock is not enough",
      call: [40, 0.02, 0.95, 0.8],
      gives: "cannot reach 95 %: even all 40 sheep are not enough, they give 80 %",
    },
    {
      call: [300, 0],
      gives: problem("design_prevalence: 0 lame cannot be found; enter the smallest share that matters, such as 0.02"),
    },
    {
      call: [300, 5],
      gives: problem("design_prevalence: 5 is above 1; enter a share from 0 to 1, such as 0.05 or 5%"),
    },
    {
      call: [300, 0.05, 0.95, 0],
      gives: problem("sensitivity: 0 finds no lame sheep at all; enter the share of lame sheep that a look finds"),
    },
    { call: [0, 0.05], gives: problem("flock_size: 0 is below 1; enter a whole number of sheep, 1 or more") },
  ],
});
