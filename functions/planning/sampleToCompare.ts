import { sampleToCompare } from "../../src/core/planning/sampleToCompare.ts";
import { defineFunction } from "../../src/definition/defineFunction.ts";
import { problem } from "../../src/definition/problemExamples.ts";
import { confidence, innerShare, share } from "../../src/reading/numbers.ts";
import { one, oneOr } from "../../src/reading/parameter.ts";
import { single } from "../../src/writing/result.ts";
import { sources } from "../sources.ts";

export const sampleToCompareFunction = defineFunction({
  name: "SAMPLETOCOMPARE",
  summary: "How many sheep to look at each time, or in each of two flocks, for a change in the share lame to show.",
  questions: [
    "how many sheep to see whether lameness went down",
    "sample size to compare two flocks",
    "sample size before and after",
  ],
  notes: [
    "So many sheep are to be looked at each time, or in each flock. Then the change shows with the chance asked for: p in PREVCHANGE comes out at or below what confidence leaves to 1.",
    "before and after are what you think the shares are; the nearer they lie to each other, the more sheep it takes.",
    "Exact to 5,000 sheep a look, beyond that a usual approximation. It supposes two separate, fair looks. Where whole groups are looked at, multiply by the design effect that FLOCKSPREAD gives.",
    "A flock that has fewer sheep cannot show the change this way; look at it several times, or at the same animals.",
  ],
  parameters: {
    before: one(share, "The share lame before, or in one flock, such as 10%"),
    after: one(share, "The share lame after, or in the other flock, such as 2%"),
    power: oneOr(innerShare, 0.8, "Wanted chance of showing the change: 0.8 is 8 in 10"),
    confidence: oneOr(confidence, 0.95, "How sure the comparison is to be: 0.95 for p of 0.05"),
  },
  result: single("sheep to look at each time", "count"),
  caution: undefined,
  sources: [sources.fisher1935, sources.casagrande1978],
  compute: (plan) => sampleToCompare(plan),
  examples: [
    { shows: "From 10 % lame down to 2 %", call: [0.1, 0.02], gives: 150 },
    { shows: "The same, to be surer that it shows", call: [0.1, 0.02, 0.9], gives: 188 },
    { shows: "From 5 % to 2 %: a small change takes many sheep", call: [0.05, 0.02], gives: 622 },
    {
      call: [0.05, 0.05],
      gives: problem("after: 0.05 is no change; enter the share after the change that is to be seen"),
    },
    { call: [10, 0.02], gives: problem("before: 10 is above 1; enter a share from 0 to 1, such as 0.05 or 5%") },
  ],
});
