import { chanceByMethod } from "../../src/core/planning/chanceByMethod.ts";
import { about, defineFunction } from "../../src/definition/defineFunction.ts";
import { problem } from "../../src/definition/problemExamples.ts";
import { count } from "../../src/reading/numbers.ts";
import { one } from "../../src/reading/parameter.ts";
import { single } from "../../src/writing/result.ts";
import { sources } from "../sources.ts";
import { findingNotes, findingParameters } from "./findingParameters.ts";

export const detectChanceFunction = defineFunction({
  name: "DETECTCHANCE",
  summary: "The chance of finding at least one lame sheep, if the flock has as many as you name.",
  questions: ["chance of finding a lame sheep", "how sure is it that we would have seen it", "power to detect disease"],
  notes: [...findingNotes],
  parameters: {
    flock_size: findingParameters.flock_size,
    looked_at: one(count("sheep looked at"), "Sheep looked at, each counted once"),
    design_prevalence: findingParameters.design_prevalence,
    sensitivity: findingParameters.sensitivity,
    method: findingParameters.method,
  },
  result: single("chance of finding at least one", "share"),
  caution: undefined,
  sources: [sources.cameronBaldock1998, sources.macDiarmid1988],
  compute: ({ flock_size, looked_at, design_prevalence, sensitivity, method }) =>
    chanceByMethod[method]({
      flockSize: flock_size,
      lookedAt: looked_at,
      designPrevalence: design_prevalence,
      sensitivity,
    }),
  examples: [
    { shows: "58 looked at of 1,000, 5 % lame", call: [1000, 58, 0.05], gives: about(0.9533738099) },
    {
      shows: "The same by the usual approximation",
      call: [1000, 58, 0.05, 1, "formula"],
      gives: about(0.9495866985),
    },
    { shows: "As many as SAMPLETOFIND asks for", call: [300, 67, 0.05, 0.8], gives: about(0.9507846597) },
    {
      shows: "One lame of 40, all looked at with a look that finds 8 of 10",
      call: [40, 40, 0.02, 0.8],
      gives: about(0.8),
    },
    { shows: "None looked at", call: [40, 0, 0.02], gives: 0 },
    {
      call: [40, 50, 0.02],
      gives: problem("looked_at: 50 is more than the 40 sheep of the flock; enter each sheep looked at once"),
    },
    {
      call: [40, 20, 0.02, 80],
      gives: problem("sensitivity: 80 is above 1; enter a share from 0 to 1, such as 0.05 or 5%"),
    },
  ],
});
