import { dayOf } from "../../src/cells/day.ts";
import { spreadWords } from "../../src/core/counting/countedLooks.ts";
import type { LimitKind } from "../../src/core/watching/gatherLimits.ts";
import { gatherFault } from "../../src/core/watching/gathersByDay.ts";
import { lameWatch, type WatchedGather } from "../../src/core/watching/lameWatch.ts";
import { levelWords } from "../../src/core/watching/usualLevels.ts";
import { about, defineFunction } from "../../src/definition/defineFunction.ts";
import { problem } from "../../src/definition/problemExamples.ts";
import { countFrom } from "../../src/reading/numbers.ts";
import { oneOr, oneOrNone } from "../../src/reading/parameter.ts";
import { choice } from "../../src/reading/words.ts";
import { table } from "../../src/writing/result.ts";
import { sources } from "../sources.ts";
import { datedGatherColumns, datedGatherNotes } from "./datedGatherColumns.ts";

const limitKinds = ["exact", "3sigma"] as const satisfies readonly LimitKind[];

export const lameWatchFunction = defineFunction({
  name: "LAMEWATCH",
  summary:
    "Whether the share lame at a gather is more than the usual ups and downs: a control chart with signals in words.",
  questions: [
    "is this gather worse than usual",
    "control chart for lameness",
    "has something changed in the flock",
    "which gathers are out of the ordinary",
  ],
  notes: [
    ...datedGatherNotes,
    "Two rules give a signal: a share beyond its limits, and eight or more gathers in a row on one side of the centre. Gathers within the limits are the ordinary ups and downs of chance.",
    'The "exact" limits are the fewest and the most lame sheep that chance does not bring more rarely than 0.00135 on their side; "3sigma" are the usual ones of three standard deviations, which fit small gathers badly and are cut at 0 and 100 %. A share on a limit is within.',
    "baseline_gathers: how many of the first gathers make the centre, when the time before a change is to judge the time after. Left out, all gathers do. A baseline without a lame sheep makes every later lame sheep a signal: give it more gathers.",
    'Gathers of one flock differ by more than chance. So the limits allow for the steps from one gather of the baseline to the next (a p′ chart); a baseline of one or two gathers shows no such steps, and its limits are those of chance. spread "chance" leaves that out, and calls out too often.',
    'usual_level "month" sets each gather against the gathers of the same month in other years, so that a bad autumn is no signal where autumns are bad. It needs at least one other year; months without one have no limits.',
    "Gathers close together see the same lame sheep again, which makes signals come oftener than the limits suppose.",
  ],
  parameters: {
    ...datedGatherColumns,
    baseline_gathers: oneOrNone(
      countFrom(1, "gathers"),
      "How many of the first gathers make the centre; left out, all",
    ),
    limits: oneOr(choice(...limitKinds), "exact", "How the limits are worked out: exact or 3sigma"),
    spread: oneOr(
      choice(...spreadWords),
      "gathers",
      "What the limits allow for: gathers (they differ beyond chance) or chance",
    ),
    usual_level: oneOr(
      choice(...levelWords),
      "all",
      "What is usual: all (the baseline gathers) or month (the same month of other years)",
    ),
  },
  result: table<WatchedGather>(
    "no gathers",
    ["date", "date", ({ date }) => date],
    ["share", "share", ({ share }) => share],
    ["centre", "share", ({ centre }) => centre],
    ["low limit", "share", ({ low }) => low],
    ["high limit", "share", ({ high }) => high],
    ["signal", "text", ({ signal }) => signal],
  ),
  caution: undefined,
  sources: [sources.shewhart1931, sources.nistProportions, sources.laney2002, sources.westernElectric1956],
  rowFault: ({ lame, seen }, index) => gatherFault(lame, seen, index),
  compute: ({ dates, lame, seen, baseline_gathers, limits, spread, usual_level }) =>
    lameWatch(dates, lame, seen, { baselineGathers: baseline_gathers, limits, spread, usualLevel: usual_level }),
  examples: [
    {
      shows: "Two ordinary gathers make the centre; a blank row; then a bad one",
      call: [
        [dayOf("2026-03-01"), dayOf("2026-04-01"), null, dayOf("2026-05-01")],
        [4, 6, null, 14],
        [100, 100, null, 60],
        2,
      ],
      gives: [
        ["date", "share", "centre", "low limit", "high limit", "signal"],
        [dayOf("2026-03-01"), 0.04, 0.05, 0, 0.13, ""],
        [dayOf("2026-04-01"), 0.06, 0.05, 0, 0.13, ""],
        [dayOf("2026-05-01"), about(0.2333333333), 0.05, 0, 0.15, "above the high limit"],
      ],
    },
    {
      shows: "Eight gathers in a row below the centre",
      call: [
        [
          "2026-01-01",
          "2026-01-11",
          "2026-01-21",
          "2026-02-01",
          "2026-02-11",
          "2026-02-21",
          "2026-03-01",
          "2026-03-11",
          "2026-03-21",
        ],
        [10, 4, 3, 4, 4, 3, 4, 4, 3],
        [100, 100, 100, 100, 100, 100, 100, 100, 100],
        1,
      ],
      gives: [
        ["date", "share", "centre", "low limit", "high limit", "signal"],
        [dayOf("2026-01-01"), 0.1, 0.1, 0.02, 0.2, ""],
        [dayOf("2026-01-11"), 0.04, 0.1, 0.02, 0.2, ""],
        [dayOf("2026-01-21"), 0.03, 0.1, 0.02, 0.2, ""],
        [dayOf("2026-02-01"), 0.04, 0.1, 0.02, 0.2, ""],
        [dayOf("2026-02-11"), 0.04, 0.1, 0.02, 0.2, ""],
        [dayOf("2026-02-21"), 0.03, 0.1, 0.02, 0.2, ""],
        [dayOf("2026-03-01"), 0.04, 0.1, 0.02, 0.2, ""],
        [dayOf("2026-03-11"), 0.04, 0.1, 0.02, 0.2, ""],
        [dayOf("2026-03-21"), 0.03, 0.1, 0.02, 0.2, "eight in a row below the centre"],
      ],
    },
    {
      shows: "Limits of three standard deviations",
      call: [[dayOf("2026-03-01"), dayOf("2026-04-01")], [25, 25], [50, 50], undefined, "3sigma"],
      gives: [
        ["date", "share", "centre", "low limit", "high limit", "signal"],
        [dayOf("2026-03-01"), 0.5, 0.5, about(0.2878679656), about(0.7121320344), ""],
        [dayOf("2026-04-01"), 0.5, 0.5, about(0.2878679656), about(0.7121320344), ""],
      ],
    },
    {
      shows: "Gathers that differ beyond chance have wider limits",
      call: [
        ["2026-01-01", "2026-02-01", "2026-03-01", "2026-04-01", "2026-05-01"],
        [3, 9, 4, 8, 15],
        [100, 100, 100, 100, 100],
        4,
      ],
      gives: [
        ["date", "share", "centre", "low limit", "high limit", "signal"],
        [dayOf("2026-01-01"), 0.03, 0.06, 0, 0.26, ""],
        [dayOf("2026-02-01"), 0.09, 0.06, 0, 0.26, ""],
        [dayOf("2026-03-01"), 0.04, 0.06, 0, 0.26, ""],
        [dayOf("2026-04-01"), 0.08, 0.06, 0, 0.26, ""],
        [dayOf("2026-05-01"), 0.15, 0.06, 0, 0.26, ""],
      ],
    },
    {
      shows: "The same by chance alone",
      call: [
        ["2026-01-01", "2026-02-01", "2026-03-01", "2026-04-01", "2026-05-01"],
        [3, 9, 4, 8, 15],
        [100, 100, 100, 100, 100],
        4,
        undefined,
        "chance",
      ],
      gives: [
        ["date", "share", "centre", "low limit", "high limit", "signal"],
        [dayOf("2026-01-01"), 0.03, 0.06, 0, 0.14, ""],
        [dayOf("2026-02-01"), 0.09, 0.06, 0, 0.14, ""],
        [dayOf("2026-03-01"), 0.04, 0.06, 0, 0.14, ""],
        [dayOf("2026-04-01"), 0.08, 0.06, 0, 0.14, ""],
        [dayOf("2026-05-01"), 0.15, 0.06, 0, 0.14, "above the high limit"],
      ],
    },
    {
      shows: "Against the same month of other years: 16 lame are usual in October, and not in June",
      call: [
        ["2024-06-10", "2024-10-10", "2025-06-10", "2025-10-10", "2026-03-10", "2026-06-10", "2026-10-10"],
        [3, 14, 4, 15, 4, 16, 16],
        [100, 100, 100, 100, 100, 100, 100],
        4,
        undefined,
        undefined,
        "month",
      ],
      gives: [
        ["date", "share", "centre", "low limit", "high limit", "signal"],
        [dayOf("2024-06-10"), 0.03, 0.04, 0, 0.17, ""],
        [dayOf("2024-10-10"), 0.14, 0.15, 0.03, 0.33, ""],
        [dayOf("2025-06-10"), 0.04, 0.03, 0, 0.15, ""],
        [dayOf("2025-10-10"), 0.15, 0.14, 0.03, 0.32, ""],
        [dayOf("2026-03-10"), 0.04, "", "", "", "no gather in this month of another year"],
        [dayOf("2026-06-10"), 0.16, 0.035, 0, 0.13, "above the high limit"],
        [dayOf("2026-10-10"), 0.16, 0.145, 0.04, 0.29, ""],
      ],
    },
    {
      call: [[dayOf("2026-03-01"), dayOf("2026-04-01")], [4, 6], [100, 100], 3],
      gives: problem("baseline_gathers: 3 cannot be the baseline of 2 gathers; enter 1 to 2"),
    },
    {
      shows: "A gather of which no sheep were looked at, and one without its day",
      call: [
        [dayOf("2026-03-01"), dayOf("2026-04-01"), null],
        [4, 0, 6],
        [100, 0, 100],
      ],
      gives: [
        ["date", "share", "centre", "low limit", "high limit", "signal"],
        [dayOf("2026-03-01"), 0.04, 0.04, 0, 0.11, ""],
        [
          "2 rows left out; the first to mend: seen, row 2: 0 sheep seen on this day give no share; enter how many were looked at, or leave the row blank",
          "",
          "",
          "",
          "",
          "",
        ],
      ],
    },
    {
      call: [[dayOf("2026-04-01")], [0], [0]],
      gives: problem(
        "seen: 0 sheep seen on this day give no share; enter how many were looked at, or leave the row blank",
      ),
    },
  ],
});
