import { prevalenceRange } from "../../src/core/counting/prevalenceRange.ts";
import type { Interval } from "../../src/core/statistics/interval.ts";
import type { IntervalMethod } from "../../src/core/statistics/proportionInterval.ts";
import { about, defineFunction } from "../../src/definition/defineFunction.ts";
import { nothing, problem } from "../../src/definition/problemExamples.ts";
import { countFrom } from "../../src/reading/numbers.ts";
import { oneOr, oneOrNone } from "../../src/reading/parameter.ts";
import { choice } from "../../src/reading/words.ts";
import { row } from "../../src/writing/result.ts";
import { sources } from "../sources.ts";
import { confidenceChoice, gatherColumns, gatherNotes, spreadColumns, spreadNotes } from "./gatherColumns.ts";

const methods = ["wilson", "exact", "jeffreys"] as const satisfies readonly IntervalMethod[];

export const prevalenceRangeFunction = defineFunction({
  name: "PREVRANGE",
  summary: "The range in which the true share of lame sheep lies, low and high.",
  questions: [
    "how sure is the share of lame sheep",
    "confidence interval for prevalence",
    "margin of error for lameness",
  ],
  notes: [
    ...gatherNotes,
    ...spreadNotes,
    '"wilson" is right on average and the usual choice; "exact" (Clopper–Pearson) is never surer than it says and therefore wider; "jeffreys" lies between.',
    "With flock_size the range is exact for a flock of that size, whatever the method: when the whole flock was looked at, it is the share itself. The rows are then parts of one look, so leave flock_size out for gathers of several days.",
    "It supposes that the sheep looked at are a fair sample. Lame sheep that hang back at the gather make every range too low.",
  ],
  parameters: {
    ...gatherColumns,
    confidence: confidenceChoice,
    flock_size: oneOrNone(countFrom(1), "Sheep in the whole flock, when only a part of it was looked at"),
    method: oneOr(choice(...methods), "wilson", "How it is worked out: wilson, exact or jeffreys"),
    ...spreadColumns,
  },
  result: row<Interval>(["low", "share", ({ low }) => low], ["high", "share", ({ high }) => high]),
  caution: undefined,
  sources: [
    sources.wilson1927,
    sources.clopperPearson1934,
    sources.brownCaiDasGupta2001,
    sources.newcombe1998single,
    sources.buonaccorsi1987,
    sources.kornGraubard1998,
    sources.angell2018,
  ],
  compute: ({ lame, seen, confidence, flock_size, method, spread, dates }) =>
    prevalenceRange(lame, seen, { confidence, method, flockSize: flock_size, spread, dates }),
  examples: [
    { shows: "81 lame of 263 looked at", call: [81, 263], gives: [[about(0.2552885199), about(0.366209577)]] },
    {
      shows: "The same, exact",
      call: [81, 263, 0.95, undefined, "exact"],
      gives: [[about(0.2527367456), about(0.3676219226)]],
    },
    {
      shows: "The same, Jeffreys",
      call: [81, 263, 0.95, undefined, "Jeffreys"],
      gives: [[about(0.254521935), about(0.3656474992)]],
    },
    {
      shows: "Four gathers, their long-run share",
      call: [
        [4, 9, null, 3, 12],
        [100, 110, null, 95, 120],
      ],
      gives: [[about(0.0303212505), about(0.1372468466)]],
    },
    {
      shows: "The same gathers taken as one look, by chance alone",
      call: [[4, 9, null, 3, 12], [100, 110, null, 95, 120], undefined, undefined, undefined, "chance"],
      gives: [[about(0.0459719268), about(0.0935702224)]],
    },
    {
      shows: "Two gathers, one of them in two rows",
      call: [
        [3, 1, 9],
        [60, 40, 110],
        undefined,
        undefined,
        undefined,
        undefined,
        ["2026-03-01", "2026-03-01", "2026-04-01"],
      ],
      gives: [[about(0.0164079317), about(0.2070069064)]],
    },
    { shows: "None lame of 20: the share may still be 16 %", call: [0, 20], gives: [[0, about(0.1611251581)]] },
    {
      shows: "A part of a flock of 100, over two gathers",
      call: [[1, null, 2], [12, null, 8], 0.95, 100],
      gives: [[0.05, 0.35]],
    },
    { shows: "The whole flock looked at", call: [10, 100, 0.95, 100], gives: [[0.1, 0.1]] },
    {
      call: [3, 20, 95],
      gives: problem("confidence: 95 is above 0.9999; enter a confidence from 0.5 to 0.9999, such as 0.95"),
    },
    {
      call: [3, 20, 0.95, 10],
      gives: problem(
        "flock_size: 10 is fewer than the 20 sheep seen; enter the size of the whole flock, or leave flock_size out when sheep were seen more than once",
      ),
    },
    {
      call: [3, 20, 0.95, undefined, "normal"],
      gives: problem('method: "normal" is not a choice here; enter one of: "wilson", "exact", "jeffreys"'),
    },
    {
      call: [[1, 2], [12, 8], 0.95, 100, undefined, undefined, ["2026-03-01", "2026-04-01"]],
      gives: problem("dates: flock_size is for one look at the flock, and the dates show 2; leave one of the two out"),
    },
    {
      call: [[1, 2], [12, 8], undefined, undefined, undefined, undefined, ["2026-03-01", null]],
      gives: problem(
        "dates, row 2: it is blank, but the row holds a record; enter the day of the gather, or leave dates out altogether",
      ),
    },
    { call: [0, 0], gives: nothing("seen: no sheep were seen, so there is no share") },
  ],
});
