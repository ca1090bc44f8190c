import { sampleToEstimate } from "../../src/core/planning/sampleToEstimate.ts";
import { defineFunction } from "../../src/definition/defineFunction.ts";
import { problem } from "../../src/definition/problemExamples.ts";
import { countFrom, share } from "../../src/reading/numbers.ts";
import { one, oneOrNone } from "../../src/reading/parameter.ts";
import { single } from "../../src/writing/result.ts";
import { confidenceChoice } from "../counting/gatherColumns.ts";
import { sources } from "../sources.ts";

export const sampleToEstimateFunction = defineFunction({
  name: "SAMPLETOESTIMATE",
  summary: "How many sheep to look at to know the share lame within a margin.",
  questions: ["how many sheep to look at", "sample size for prevalence", "how many to be within 1 per cent"],
  notes: [
    "expected is what you think the share is; when unsure, the value nearest to a half that you think possible, which asks for most sheep.",
    "precision is the margin either side: 1% for a share known as 2 % give or take 1 %.",
    "With flock_size fewer are enough. It supposes a fair sample; sheep of one group are alike, so spread the looks over the groups.",
    "A plan by the usual rule, which is rough when fewer than about 10 lame sheep are to be seen: check the answer afterwards with PREVRANGE.",
  ],
  parameters: {
    expected: one(share, "The share lame that you expect, such as 5%"),
    precision: one(share, "The margin either side, such as 2%"),
    flock_size: oneOrNone(countFrom(1), "Sheep in the flock; left out, it is taken as endless"),
    confidence: confidenceChoice,
  },
  result: single("sheep to look at", "count"),
  caution: undefined,
  sources: [sources.cochran1977],
  compute: ({ expected, precision, flock_size, confidence }) =>
    sampleToEstimate({ expected, precision, flockSize: flock_size, confidence }),
  examples: [
    { shows: "2 % give or take 1 %, in a flock of 1,000", call: [0.02, 0.01, 1000], gives: 430 },
    { shows: "Nothing known beforehand, give or take 5 %, in a flock of 900", call: [0.5, 0.05, 900], gives: 270 },
    { shows: "An endless flock", call: [0.5, 0.05], gives: 385 },
    {
      call: [0, 0.01],
      gives: problem(
        "expected: with 0 the sum asks for no sheep at all; enter the share nearest to a half that you think possible, or use SAMPLETOFIND",
      ),
    },
    {
      call: [0.05, 0],
      gives: problem("precision: 0 would need every sheep there is; enter a margin above 0, such as 0.01"),
    },
    { call: [5, 0.01], gives: problem("expected: 5 is above 1; enter a share from 0 to 1, such as 0.05 or 5%") },
  ],
});
