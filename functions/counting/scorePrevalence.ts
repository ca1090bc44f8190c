import { scorePrevalence } from "../../src/core/counting/scorePrevalence.ts";
import { defineFunction } from "../../src/definition/defineFunction.ts";
import { nothing, problem } from "../../src/definition/problemExamples.ts";
import { nonNegative } from "../../src/reading/numbers.ts";
import { column, one } from "../../src/reading/parameter.ts";
import { single } from "../../src/writing/result.ts";
import { sources } from "../sources.ts";

const score = nonNegative("a locomotion score");

export const scorePrevalenceFunction = defineFunction({
  name: "SCOREPREV",
  summary: "The share of the sheep scored that were lame, from a column of locomotion scores.",
  questions: ["share lame from locomotion scores", "how many have a score of 2 or more", "mobility scores"],
  notes: [
    "Any scale will do on which a higher score is a lamer sheep. lame_from must be given, because scales differ; on the 0–6 scale for sheep, lame is commonly 2 or more.",
    "Blank cells are sheep that were not scored: they count neither as lame nor as sound.",
    'Some spreadsheets hand over blank cells as 0, which here would be sound sheep. HOSTCHECK tells whether this one does; then write IF(A2:A50="","",A2:A50) instead of A2:A50.',
  ],
  parameters: {
    scores: column(score, "Locomotion scores, one a sheep"),
    lame_from: one(score, "The lowest score that is called lame"),
  },
  result: single("share lame", "share"),
  caution: undefined,
  sources: [sources.kaler2009, sources.practice],
  compute: ({ scores, lame_from }) => scorePrevalence(scores, lame_from),
  examples: [
    { shows: "Lame from score 2; one sheep was not scored", call: [[0, 1, 2, null, 4], 2], gives: 0.5 },
    { shows: "Numbers kept as text", call: [["0", " 3 ", "1", "0", "0"], 2], gives: 0.2 },
    { call: [[0, 1, 2]], gives: problem("lame_from: it is left out; enter a locomotion score, 0 or more") },
    {
      call: [[0, "lame", 2], 2],
      gives: problem('scores, row 2: "lame" is not a number; enter a locomotion score, 0 or more'),
    },
    { call: [[null, null], 2], gives: nothing("scores: no sheep was scored, so there is no share") },
  ],
});
