import { type FlockSpread, flockSpread } from "../../src/core/benchmarking/flockSpread.ts";
import { about, defineFunction } from "../../src/definition/defineFunction.ts";
import { nothing, problem } from "../../src/definition/problemExamples.ts";
import { row } from "../../src/writing/result.ts";
import { confidenceChoice } from "../counting/gatherColumns.ts";
import { sources } from "../sources.ts";
import { flockColumns } from "./flockColumns.ts";

export const flockSpreadFunction = defineFunction({
  name: "FLOCKSPREAD",
  summary: "How much flocks differ beyond chance: pooled share, likeness of sheep within a flock, design effect.",
  questions: [
    "how much do flocks differ",
    "intra-flock correlation",
    "design effect for a survey",
    "spread between flocks",
  ],
  notes: [
    "A row for each flock. Flocks of which no sheep were seen say nothing and do not count.",
    "The likeness (intra-flock correlation, the analysis-of-variance estimate) is 0 when flocks differ by chance only and 1 when each has all or none lame. Chance can take it a little below 0; the design effect is then 1, and never less.",
    "The design effect is how many times more sheep a survey of such flocks needs than one that picks sheep at random: multiply the answer of SAMPLETOESTIMATE by it.",
    "Few flocks say little about how much flocks differ: look at the range before you plan by the design effect, and plan with its high end where a survey must not turn out too small.",
  ],
  parameters: { lame: flockColumns.lame, seen: flockColumns.seen, confidence: confidenceChoice },
  result: row<FlockSpread>(
    ["share lame", "share", ({ share }) => share],
    ["intra-flock correlation", "p value", ({ correlation }) => correlation],
    ["design effect", "rate", ({ designEffect }) => designEffect],
    ["low correlation", "p value", ({ low }) => low],
    ["high correlation", "p value", ({ high }) => high],
    ["low design effect", "rate", ({ lowEffect }) => lowEffect],
    ["high design effect", "rate", ({ highEffect }) => highEffect],
  ),
  caution: undefined,
  sources: [sources.donnerKoval1980, sources.ridout1999, sources.griffiths1973],
  compute: ({ lame, seen, confidence }) => flockSpread(lame, seen, confidence),
  examples: [
    {
      shows: "Two flocks of 10, one row left blank",
      call: [
        [1, null, 8],
        [10, null, 10],
      ],
      gives: [[0.45, about(0.6246246246), about(6.6216216216), 0, 1, 1, 10]],
    },
    {
      shows: "Six invented flocks that hardly differ: the design effect is 1, and may be 3.3",
      call: [
        [5, 4, 6, 5, 3, 6],
        [100, 90, 110, 120, 80, 100],
      ],
      gives: [[about(0.0483333333), about(-0.0086275673), 1, 0, about(0.022957, 6), 1, about(3.311041, 6)]],
    },
    { call: [[4], [100]], gives: problem("lame: one flock alone has no spread between flocks; give two or more") },
    {
      call: [
        [4, 6],
        [100, 5],
      ],
      gives: problem("lame, row 2: 6 is more than the 5 seen; enter the lame sheep among those seen"),
    },
    {
      call: [
        [0, 0],
        [100, 50],
      ],
      gives: nothing("lame: no sheep was lame, so there is no spread"),
    },
    {
      call: [
        [0, 1],
        [1, 1],
      ],
      gives: nothing("seen: one sheep a flock tells nothing of how alike sheep of a flock are"),
    },
  ],
});
