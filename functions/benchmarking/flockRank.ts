import { flockRank } from "../../src/core/benchmarking/flockRank.ts";
import { defineFunction } from "../../src/definition/defineFunction.ts";
import { nothing, problem } from "../../src/definition/problemExamples.ts";
import { anyNumber } from "../../src/reading/numbers.ts";
import { column, one, oneOr } from "../../src/reading/parameter.ts";
import { yesNo } from "../../src/reading/words.ts";
import { single } from "../../src/writing/result.ts";
import { sources } from "../sources.ts";

export const flockRankFunction = defineFunction({
  name: "FLOCKRANK",
  summary: "The share of the other flocks that this flock does better than.",
  questions: [
    "where do we stand among other flocks",
    "are we in the best quarter",
    "percentile of a flock",
    "compare with other farms",
  ],
  notes: [
    "Flocks that do just as well count half. Blank cells are no flocks.",
    "values are those of the other flocks: leave the flock's own value out, or it counts itself half.",
    "It ranks what was seen. A small flock stands at the top or the bottom by chance more often than a large one: see FUNNEL and SHRUNKPREV.",
  ],
  parameters: {
    value: one(anyNumber(), "The flock's own value, such as its share lame"),
    values: column(anyNumber(), "The values of the other flocks"),
    low_is_good: oneOr(yesNo, true, "Whether a lower value is better: TRUE for lameness"),
  },
  result: single("share of the other flocks", "share"),
  caution: undefined,
  sources: [sources.practice],
  compute: ({ value, values, low_is_good }) => flockRank(value, values, low_is_good),
  examples: [
    {
      shows: "Among four other flocks, one of them as good",
      call: [0.03, [0.02, 0.03, null, 0.05, 0.08]],
      gives: 0.625,
    },
    { shows: "More is better: share treated within 3 days", call: [0.9, [0.5, 0.8, 0.95], "no"], gives: 2 / 3 },
    { call: ["about 3", [0.02, 0.03]], gives: problem('value: "about 3" is not a number; enter a number') },
    { call: [0.03, [0.02, "n/a"]], gives: problem('values, row 2: "n/a" is not a number; enter a number') },
    { call: [0.03, [null, null]], gives: nothing("values: there is no other flock to compare with") },
  ],
});
