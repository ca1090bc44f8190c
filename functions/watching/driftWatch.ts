import { dayOf } from "../../src/cells/day.ts";
import { spreadWords } from "../../src/core/counting/countedLooks.ts";
import { type DriftedGather, driftWatch } from "../../src/core/watching/driftWatch.ts";
import { gatherFault } from "../../src/core/watching/gathersByDay.ts";
import { about, defineFunction } from "../../src/definition/defineFunction.ts";
import { problem } from "../../src/definition/problemExamples.ts";
import { anyNumber, innerShare } from "../../src/reading/numbers.ts";
import { oneOr, oneOrNone } from "../../src/reading/parameter.ts";
import { choice } from "../../src/reading/words.ts";
import { table } from "../../src/writing/result.ts";
import { sources } from "../sources.ts";
import { datedGatherColumns, datedGatherNotes } from "./datedGatherColumns.ts";

export const driftWatchFunction = defineFunction({
  name: "DRIFTWATCH",
  summary:
    "Whether the share lame creeps up or down: a moving average with limits, in which the newest gathers weigh most.",
  questions: ["is lameness creeping up", "slow drift of lameness", "moving average of prevalence", "EWMA chart"],
  notes: [
    ...datedGatherNotes,
    "The average starts at the centre and takes in each new share with the weight given: a small weight finds small lasting changes, a large one finds sudden ones.",
    "The limits are exact in their standard deviation for each gather's number of sheep, and widen from the first gather on, never below 0 or above 100 %. That they hold so often as they should rests on many sheep at each gather.",
    'Gathers of one flock differ by more than chance. So the limits allow for the steps from one gather to the next; one gather shows no such steps. spread "chance" leaves that out, and calls out far too often.',
    "Without a target the centre is the share of all gathers together, so a drift that lasts through all of them shows less.",
  ],
  parameters: {
    ...datedGatherColumns,
    weight: oneOr(
      anyNumber("a number above 0 and at most 1, such as 0.2"),
      0.2,
      "Weight of the newest gather, above 0 and at most 1",
    ),
    width: oneOr(anyNumber("a number above 0, such as 3"), 3, "Limits so many standard deviations from the centre"),
    target: oneOrNone(innerShare, "The share expected; left out, that of all gathers together"),
    spread: oneOr(
      choice(...spreadWords),
      "gathers",
      "What the limits allow for: gathers (they differ beyond chance) or chance",
    ),
  },
  result: table<DriftedGather>(
    "no gathers",
    ["date", "date", ({ date }) => date],
    ["share", "share", ({ share }) => share],
    ["moving average", "share", ({ drift }) => drift],
    ["centre", "share", ({ centre }) => centre],
    ["low limit", "share", ({ low }) => low],
    ["high limit", "share", ({ high }) => high],
    ["signal", "text", ({ signal }) => signal],
  ),
  caution: undefined,
  sources: [sources.roberts1959, sources.nistMovingAverage, sources.laney2002],
  rowFault: ({ lame, seen }, index) => gatherFault(lame, seen, index),
  compute: ({ dates, lame, seen, weight, width, target, spread }) =>
    driftWatch(dates, lame, seen, { weight, width, target, spread }),
  examples: [
    {
      shows: "Three gathers against a target of 5 %, one row left blank; they differ much, so the limits are wide",
      call: [
        [dayOf("2026-03-01"), dayOf("2026-04-01"), null, dayOf("2026-05-01")],
        [5, 12, null, 14],
        [100, 100, null, 100],
        undefined,
        undefined,
        0.05,
      ],
      gives: [
        ["date", "share", "moving average", "centre", "low limit", "high limit", "signal"],
        [dayOf("2026-03-01"), 0.05, 0.05, 0.05, about(0.026071873), about(0.073928127), ""],
        [dayOf("2026-04-01"), 0.12, 0.064, 0.05, about(0.019357046), about(0.080642954), ""],
        [dayOf("2026-05-01"), 0.14, 0.0792, 0.05, about(0.0157434785), about(0.0842565215), ""],
      ],
    },
    {
      shows: "The same by chance alone",
      call: [
        [dayOf("2026-03-01"), dayOf("2026-04-01"), null, dayOf("2026-05-01")],
        [5, 12, null, 14],
        [100, 100, null, 100],
        undefined,
        undefined,
        0.05,
        "chance",
      ],
      gives: [
        ["date", "share", "moving average", "centre", "low limit", "high limit", "signal"],
        [dayOf("2026-03-01"), 0.05, 0.05, 0.05, about(0.0369233032), about(0.0630766968), ""],
        [dayOf("2026-04-01"), 0.12, 0.064, 0.05, about(0.0332536571), about(0.0667463429), ""],
        [dayOf("2026-05-01"), 0.14, 0.0792, 0.05, about(0.0312788462), about(0.0687211538), "above the high limit"],
      ],
    },
    {
      shows: "A weight of 1 looks at each gather alone",
      call: [["2026-03-01", "2026-04-01"], [5, 15], [100, 100], 1, 2],
      gives: [
        ["date", "share", "moving average", "centre", "low limit", "high limit", "signal"],
        [dayOf("2026-03-01"), 0.05, 0.05, 0.1, 0, about(0.2772453851), ""],
        [dayOf("2026-04-01"), 0.15, 0.15, 0.1, 0, about(0.2772453851), ""],
      ],
    },
    {
      call: [[dayOf("2026-03-01")], [5], [100], 1.5],
      gives: problem("weight: 1.5 is out of range; enter a number above 0 and at most 1, such as 0.2"),
    },
    {
      call: [[dayOf("2026-03-01")], [5], [100], 0.2, 0],
      gives: problem("width: 0 is out of range; enter a number above 0, such as 3"),
    },
    {
      shows: "A gather with more lame than seen is left out",
      call: [
        [dayOf("2026-03-01"), dayOf("2026-04-01")],
        [5, 101],
        [100, 100],
      ],
      gives: [
        ["date", "share", "moving average", "centre", "low limit", "high limit", "signal"],
        [dayOf("2026-03-01"), 0.05, 0.05, 0.05, about(0.0369233032), about(0.0630766968), ""],
        [
          "1 row left out; to mend: lame, row 2: 101 is more than the 100 seen; enter the lame sheep among those seen",
          "",
          "",
          "",
          "",
          "",
          "",
        ],
      ],
    },
  ],
});
