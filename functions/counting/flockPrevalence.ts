import { pooledPrevalence } from "../../src/core/counting/pooledPrevalence.ts";
import { defineFunction } from "../../src/definition/defineFunction.ts";
import { nothing, problem } from "../../src/definition/problemExamples.ts";
import { single } from "../../src/writing/result.ts";
import { sources } from "../sources.ts";
import { gatherColumns, gatherNotes } from "./gatherColumns.ts";

export const flockPrevalenceFunction = defineFunction({
  name: "FLOCKPREV",
  summary: "The share of the sheep looked at that were lame.",
  questions: [
    "what share of the flock is lame",
    "how many per cent are lame",
    "prevalence of lameness",
    "how many lame",
    "how many are limping",
    "percentage lame",
  ],
  notes: gatherNotes,
  parameters: gatherColumns,
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
    { call: [21, 20], gives: problem("lame: 21 is more than the 20 seen; enter the lame sheep among those seen") },
    {
      call: [
        [2, ""],
        [40, 50],
      ],
      gives: problem(
        "lame, row 2: it is blank, but the row holds a record; enter a whole number of lame sheep, 0 or more",
      ),
    },
    { call: [0, 0], gives: nothing("seen: no sheep were seen, so there is no share") },
  ],
});
