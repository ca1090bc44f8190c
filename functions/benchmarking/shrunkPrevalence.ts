import { type ShrunkFlock, shrunkPrevalence } from "../../src/core/benchmarks/shrunkPrevalence.ts";
import { about, defineFunction } from "../../src/definition/defineFunction.ts";
import { nothing, problem } from "../../src/definition/problemExamples.ts";
import { table } from "../../src/writing/result.ts";
import { confidenceChoice } from "../counting/gatherColumns.ts";
import { sources } from "../sources.ts";
import { flockColumns, flockNotes } from "./flockColumns.ts";

export const shrunkPrevalenceFunction = defineFunction({
  name: "SHRUNKPREV",
  topic: "benchmarking",
  summary: "Each flock's share lame, steadied by what the other flocks show, with its range and rank.",
  questions: ["fair ranking of flocks", "small flocks at the top by luck", "shrink prevalence to the mean"],
  notes: [
    ...flockNotes,
    "The share of a flock of which few sheep were seen is drawn far towards the mean of the flocks, that of a large flock hardly. Rank 1 is the lowest steadied share; equal shares share a rank.",
    "A flock of which no sheep were seen gets the mean of the flocks, and the range in which a flock may lie.",
    "Where flocks differ no more than chance makes them, every flock gets the pooled share.",
    "The ranges take the spread between flocks as known: with fewer than about ten flocks they are too narrow.",
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
  ),
  caution: undefined,
  sources: [sources.griffiths1973, sources.martuzziElliott1996],
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
        ["flock", "share", "steadied share", "low", "high", "rank"],
        ["Hill", 0, about(0.080985001), about(0.0204626801), about(0.1775224112), 2],
        ["Low", 0.15, about(0.1455315968), about(0.1098081455), about(0.1852812135), 4],
        ["Marsh", 0.05, about(0.0542512163), about(0.0349685627), about(0.0774214781), 1],
        ["Moor", 0.2, about(0.140820862), about(0.0620010575), about(0.2450238033), 3],
      ],
    },
    {
      shows: "Two flocks that differ no more than by chance",
      call: [
        ["Hill", "Low"],
        [1, 1],
        [10, 10],
      ],
      gives: [
        ["flock", "share", "steadied share", "low", "high", "rank"],
        ["Hill", 0.1, 0.1, about(0.0278664812), about(0.3010336452), 1],
        ["Low", 0.1, 0.1, about(0.0278664812), about(0.3010336452), 1],
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
        [0, 5],
        [5, 5],
      ],
      gives: nothing(
        "lame: every flock has none or all of its sheep lame, which leaves nothing to steady the shares by",
      ),
    },
  ],
});
