import { type ShrunkFlock, shrunkPrevalence } from "../../src/core/benchmarking/shrunkPrevalence.ts";
import { about, defineFunction } from "../../src/definition/defineFunction.ts";
import { nothing, problem } from "../../src/definition/problemExamples.ts";
import { table } from "../../src/writing/result.ts";
import { confidenceChoice } from "../counting/gatherColumns.ts";
import { sources } from "../sources.ts";
import { flockColumns, flockNotes } from "./flockColumns.ts";

export const shrunkPrevalenceFunction = defineFunction({
  name: "SHRUNKPREV",
  summary:
    "Each flock's share lame, steadied by what the other flocks show, with its range, its rank and the range of that.",
  questions: ["fair ranking of flocks", "small flocks at the top by luck", "shrink prevalence to the mean"],
  notes: [
    ...flockNotes,
    "The share of a flock of which few sheep were seen is drawn far towards the mean of the flocks, that of a large flock hardly. Rank 1 is the lowest steadied share; equal shares share a rank.",
    "A flock of which no sheep were seen gets the mean of the flocks, and the range in which a flock may lie.",
    "How much flocks differ is not known either: every spread that the counts leave possible is weighed in, so the ranges hold for a few flocks too. Beforehand every mean share and every spread is taken as equally probable (the root of the intra-flock correlation, 0 to 1). Where none of the sheep seen was lame, the steadied share is small and not 0.",
    "low rank and high rank are the ranks that the flock's true share may have. The last column says better half, worse half or middle, and not told apart where the ranks spread over more than half of the flocks: such a rank says next to nothing.",
  ],
  parameters: { ...flockColumns, confidence: confidenceChoice },
  result: table<ShrunkFlock>(
    "no flocks",
    ["flock", "text", ({ flock }) => flock],
    ["share", "share", ({ share }) => share],
    ["steadied share", "share", ({ steadied }) => steadied],
    ["low", "share", ({ low }) => low],
    ["high", "share", ({ high }) => high],
    ["rank", "count", ({ rank }) => rank],
    ["low rank", "count", ({ lowRank }) => lowRank],
    ["high rank", "count", ({ highRank }) => highRank],
    ["told apart", "text", ({ word }) => word],
  ),
  caution: undefined,
  sources: [sources.gelmanBda, sources.martuzziElliott1996, sources.goldsteinSpiegelhalter1996],
  compute: ({ flocks, lame, seen, confidence }) => shrunkPrevalence(flocks, lame, seen, confidence),
  examples: [
    {
      shows: "Four invented flocks, one row left blank",
      call: [
        ["Hill", "Low", null, "Marsh", "Moor"],
        [0, 45, null, 20, 4],
        [10, 300, null, 400, 20],
      ],
      gives: [
        ["flock", "share", "steadied share", "low", "high", "rank", "low rank", "high rank", "told apart"],
        ["Hill", 0, about(0.064741, 6), about(0.0000285, 6), about(0.2091588, 6), 2, 1, 4, "not told apart"],
        ["Low", 0.15, about(0.1483632, 6), about(0.110731, 6), about(0.1904171, 6), 3, 2, 4, "not told apart"],
        ["Marsh", 0.05, about(0.0528225, 6), about(0.0328753, 6), about(0.0771551, 6), 1, 1, 2, "better half"],
        ["Moor", 0.2, about(0.174482, 6), about(0.0619706, 6), about(0.3474971, 6), 4, 2, 4, "not told apart"],
      ],
    },
    {
      shows: "Two flocks that are alike",
      call: [
        ["Hill", "Low"],
        [1, 1],
        [10, 10],
      ],
      gives: [
        ["flock", "share", "steadied share", "low", "high", "rank", "low rank", "high rank", "told apart"],
        ["Hill", 0.1, about(0.1364861, 6), about(0.015616, 6), about(0.3431911, 6), 1, 1, 2, "not told apart"],
        ["Low", 0.1, about(0.1364861, 6), about(0.015616, 6), about(0.3431911, 6), 1, 1, 2, "not told apart"],
      ],
    },
    {
      call: [
        ["Hill", "hill "],
        [4, 2],
        [100, 50],
      ],
      gives: problem("flocks: one flock alone cannot be compared with itself; give two flocks or more"),
    },
    {
      call: [
        ["Hill", "Low"],
        [4, null],
        [100, 100],
      ],
      gives: problem(
        "lame, row 2: it is blank, but the row holds a record; enter a whole number of lame sheep, 0 or more",
      ),
    },
    {
      call: [
        ["Hill", "Low"],
        [0, 0],
        [0, 0],
      ],
      gives: nothing("seen: no sheep were seen, so there is nothing to compare"),
    },
  ],
});
