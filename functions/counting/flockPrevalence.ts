import { pooledPrevalence } from "../../src/core/prevalence/pooledPrevalence.ts";
import { defineFunction } from "../../src/definition/defineFunction.ts";
import { nothing, problem } from "../../src/definition/problemExamples.ts";
import { count } from "../../src/reading/numbers.ts";
import { column } from "../../src/reading/parameter.ts";
import { single } from "../../src/writing/result.ts";
import { sources } from "../sources.ts";

export const flockPrevalence = defineFunction({
  name: "FLOCKPREV",
  topic: "counting",
  summary: "The share of the sheep looked at that were lame.",
  questions: ["what share of the flock is lame", "how many per cent are lame", "prevalence of lameness"],
  notes: [
    "Rows are pooled: all lame sheep over all sheep looked at, so a large gather weighs more than a small one.",
    "Rows that are blank in both columns are left out. A row with one of the two missing is refused, since a blank is never a sound sheep.",
  ],
  parameters: {
    lame: column(count("lame sheep"), "Lame sheep at each gather (a cell or a column)"),
    seen: column(count("sheep looked at"), "Sheep looked at, the same rows"),
  },
  result: single("share lame", "share"),
  caution: undefined,
  sources: [sources.practice],
  compute: ({ lame, seen }) => pooledPrevalence(lame, seen).share,
  examples: [
    { shows: "One gather: 4 lame of 20", call: [4, 20], gives: 0.2 },
    {
      shows: "Three gathers, one row left blank",
      call: [
        [6, null, 4, 0],
        [100, null, 120, 30],
      ],
      gives: 0.04,
    },
    { call: [21, 20], gives: problem("lame: 21 is more than the 20 seen") },
    {
      call: [
        [2, ""],
        [40, 50],
      ],
      gives: problem(
        "lame, row 2: it is blank, but the row holds a record; enter a whole number of lame sheep, 0 or more",
      ),
    },
    { call: [0, 0], gives: nothing("no sheep were looked at") },
  ],
});
