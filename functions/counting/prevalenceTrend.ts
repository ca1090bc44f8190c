import { dayOf } from "../../src/cells/day.ts";
import { countFault } from "../../src/core/counting/checkCounts.ts";
import { type PrevalenceTrend, prevalenceTrend } from "../../src/core/counting/prevalenceTrend.ts";
import { about, defineFunction } from "../../src/definition/defineFunction.ts";
import { nothing, problem } from "../../src/definition/problemExamples.ts";
import { day } from "../../src/reading/days.ts";
import { column, leavingOut } from "../../src/reading/parameter.ts";
import { row } from "../../src/writing/result.ts";
import { leftOutNote } from "../leftOutNote.ts";
import { sources } from "../sources.ts";
import { countedColumns, spreadColumns } from "./gatherColumns.ts";

export const prevalenceTrendFunction = defineFunction({
  name: "PREVTREND",
  summary:
    "Whether the share lame rises or falls over the gathers: change in 30 days, and whether chance does as much.",
  questions: ["is lameness falling over the year", "trend of prevalence", "change per month"],
  notes: [
    "The dates may be in any order. Below 0 the share falls.",
    "p is how often a rise or fall at least as steep comes when nothing changed: 0.04 is 4 times in 100. z is the slope in its standard errors.",
    "Gathers of one flock differ by more than chance, so p allows for how far they lie from the line, and where there are few of them for a spread that is usual as well. Rows of one day are one gather.",
    'spread "chance" takes each look at a sheep as a separate one (Cochran–Armitage): p is then too small wherever gathers differ by more than chance.',
    "It sees a straight rise or fall only; a share that goes up and down again over the year shows no trend. Chart it with LAMEWATCH.",
    "Gathers close together see the same lame sheep again, and p is then still too small.",
    leftOutNote,
    "When no sheep, or every sheep, was lame, there is no change: 0, 0 and p = 1.",
  ],
  parameters: {
    dates: leavingOut(column(day, "Day of each gather")),
    ...countedColumns,
    spread: spreadColumns.spread,
  },
  result: row<PrevalenceTrend>(
    ["change in 30 days", "share", ({ changePer30Days }) => changePer30Days],
    ["z", "rate", ({ z }) => z],
    ["p", "p value", ({ p }) => p],
  ),
  caution: undefined,
  sources: [sources.armitage1955, sources.mcCullaghNelder1989],
  rowFault: ({ lame, seen }, index) => countFault(lame, seen, index),
  compute: ({ dates, lame, seen, spread }) => prevalenceTrend(dates, lame, seen, spread),
  examples: [
    {
      shows: "Three gathers 30 days apart, one row left blank",
      call: [
        [dayOf("2026-03-01"), null, dayOf("2026-03-31"), dayOf("2026-04-30")],
        [12, null, 8, 4],
        [100, null, 100, 100],
      ],
      gives: [[about(-0.04), about(-1.208398554), about(0.2934446518)]],
    },
    {
      shows: "The same by chance alone",
      call: [
        [dayOf("2026-03-01"), null, dayOf("2026-03-31"), dayOf("2026-04-30")],
        [12, null, 8, 4],
        [100, null, 100, 100],
        "chance",
      ],
      gives: [[about(-0.04), about(-2.0851441406), about(0.0370562186)]],
    },
    {
      shows: "None lame at any gather",
      call: [
        [dayOf("2026-03-01"), dayOf("2026-03-31")],
        [0, 0],
        [50, 60],
      ],
      gives: [[0, 0, 1]],
    },
    {
      call: [["03/04/2026"], [2], [40]],
      gives: problem('dates: "03/04/2026" is not a date; enter a real date, or text such as 2026-03-14'),
    },
    {
      call: [
        [dayOf("2026-03-01"), dayOf("2026-03-01")],
        [2, 1],
        [40, 60],
      ],
      gives: nothing("dates: sheep were seen on one day only; a trend needs two"),
    },
  ],
});
