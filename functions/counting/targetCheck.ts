import { targetCheck } from "../../src/core/counting/targetCheck.ts";
import { defineFunction } from "../../src/definition/defineFunction.ts";
import { problem } from "../../src/definition/problemExamples.ts";
import { countFrom, innerShare } from "../../src/reading/numbers.ts";
import { one, oneOrNone } from "../../src/reading/parameter.ts";
import { single } from "../../src/writing/result.ts";
import { sources } from "../sources.ts";
import { confidenceChoice, gatherColumns, gatherNotes, spreadColumns, spreadNotes } from "./gatherColumns.ts";

export const targetCheckFunction = defineFunction({
  name: "TARGETCHECK",
  summary: "Whether the share of lame sheep is below or above a target, or not settled yet.",
  questions: ["are we below the target", "is the flock under 2 per cent lame", "how many more sheep to look at"],
  notes: [
    ...gatherNotes,
    ...spreadNotes,
    "Below or above is said only when the whole range lies on that side. Otherwise it says about how many more sheep to look at (or gathers, where there are several), supposing that the share stays as it was seen, or that no number would settle it.",
    '"in these counts only" is said of one gather: on that day the flock lay there, but gathers of one flock differ, and on another day it may lie elsewhere. Look at five gathers or more before you call a flock below its target. One gather says "above" or "below" without these words only where even a spread that is usual between gathers leaves no doubt.',
    'With flock_size the answer is of the flock on the day of that look, and spread "chance" goes by chance alone: neither speaks of the long run.',
    '"on target": the whole flock was looked at, and has just that share.',
    "A published aim for Great Britain was at most 5 % lame by 2016 and at most 2 % by 2021. The target is yours to set.",
  ],
  parameters: {
    ...gatherColumns,
    target: one(innerShare, "The share aimed at, such as 2%"),
    confidence: confidenceChoice,
    flock_size: oneOrNone(countFrom(1), "Sheep in the whole flock, when only a part of it was looked at"),
    ...spreadColumns,
  },
  result: single("the share against the target, in words", "text"),
  caution: undefined,
  sources: [sources.wilson1927, sources.buonaccorsi1987, sources.kornGraubard1998, sources.fawc2011],
  compute: ({ lame, seen, target, confidence, flock_size, spread, dates }) =>
    targetCheck(lame, seen, { target, confidence, flockSize: flock_size, spread, dates }),
  examples: [
    {
      shows: "1 lame of 200 against 5 %: one gather, so of that day only",
      call: [1, 200, 0.05],
      gives: "below target in these counts only",
    },
    {
      shows: "So many lame that no usual spread between gathers explains it",
      call: [80, 200, 0.05],
      gives: "above target",
    },
    {
      shows: "The flock of the first example at five gathers",
      call: [[1, 2, 0, 1, 2], [200, 190, 200, 195, 200], 0.05],
      gives: "below target",
    },
    {
      shows: "The first example's flock on that day: 300 sheep, of which the 200 were looked at",
      call: [1, 200, 0.05, 0.95, 300],
      gives: "below target",
    },
    {
      shows: "Too few looked at to tell",
      call: [1, 50, 0.05],
      gives: "not settled yet: look at about 153 more",
    },
    {
      shows: "Two gathers that do not tell yet",
      call: [[1, null, 0], [30, null, 20], 0.05],
      gives: "not settled yet: about 13 more gathers like these",
    },
    {
      shows: "The same two as one look, by chance alone",
      call: [[1, null, 0], [30, null, 20], 0.05, undefined, undefined, "chance"],
      gives: "not settled yet: look at about 153 more",
    },
    {
      shows: "A flock of 40 in which nobody could tell",
      call: [1, 20, 0.05, 0.95, 40],
      gives: "not settled: even all 40 sheep are not enough if the share stays as it was seen",
    },
    {
      call: [1, 20, 5],
      gives: problem("target: 5 is not below 1; enter a share above 0 and below 1, such as 0.02 or 2%"),
    },
  ],
});
