import { countFault } from "../../src/core/counting/checkCounts.ts";
import { dateFault } from "../../src/core/counting/gathersOf.ts";
import { type GroupPrevalence, prevalenceByGroup, totalFault } from "../../src/core/counting/prevalenceByGroup.ts";
import { about, defineFunction } from "../../src/definition/defineFunction.ts";
import { problem } from "../../src/definition/problemExamples.ts";
import { asNumbers, column, leavingOut } from "../../src/reading/parameter.ts";
import { text } from "../../src/reading/words.ts";
import { table } from "../../src/writing/result.ts";
import { leftOutNote } from "../leftOutNote.ts";
import { sources } from "../sources.ts";
import { confidenceChoice, countedColumns, spreadColumns, spreadNotes } from "./gatherColumns.ts";

export const prevalenceByGroupFunction = defineFunction({
  name: "PREVBY",
  summary: "The share lame in each group with its range, and in all groups together.",
  questions: [
    "which group has most lame sheep",
    "lameness by group",
    "compare ewes and lambs",
    "tups",
    "rams and ewes apart",
    "worst group",
  ],
  notes: [
    "A row for each group in order of first appearance, then all. Names that differ only in capitals or spaces are one group.",
    "A group of which no sheep was looked at shows its counts and no share.",
    ...spreadNotes,
    "The line of all groups takes each row as a gather of its own unless dates are given. Groups of one day share its weather and its looker, so give dates wherever there are several days.",
    "A row of a group called all is left out, because it would count every sheep twice.",
    leftOutNote,
  ],
  parameters: {
    groups: leavingOut(column(text("the name of a group"), "Name of the group in each row")),
    lame: asNumbers(countedColumns.lame),
    seen: asNumbers(countedColumns.seen),
    confidence: confidenceChoice,
    spread: spreadColumns.spread,
    dates: leavingOut(spreadColumns.dates),
  },
  result: table<GroupPrevalence>(
    "no groups",
    ["group", "text", ({ group }) => group],
    ["lame", "count", ({ lame }) => lame],
    ["seen", "count", ({ seen }) => seen],
    ["share", "share", ({ share }) => share],
    ["low", "share", ({ low }) => low],
    ["high", "share", ({ high }) => high],
  ),
  caution: undefined,
  sources: [sources.wilson1927, sources.kornGraubard1998, sources.practice],
  rowFault: ({ groups, lame, seen, dates }, index) =>
    totalFault(groups, index) ?? countFault(lame, seen, index) ?? dateFault(dates, index),
  compute: ({ groups, lame, seen, confidence, spread, dates }) =>
    prevalenceByGroup(groups, lame, seen, { confidence, spread, dates }),
  examples: [
    {
      shows: "One gather of two groups, the ewes in two rows",
      call: [["ewes", "rams", null, "Ewes "], [2, 0, null, 4], [40, 8, null, 60], undefined, "chance"],
      gives: [
        ["group", "lame", "seen", "share", "low", "high"],
        ["ewes", 6, 100, 0.06, about(0.027786124), about(0.1247681545)],
        ["rams", 0, 8, 0, 0, about(0.3244075649)],
        ["all", 6, 108, about(0.0555555556), about(0.0257077296), about(0.1159343679)],
      ],
    },
    {
      shows: "Three gathers of two groups, by their dates",
      call: [
        ["ewes", "lambs", "ewes", "lambs", "ewes", "lambs"],
        [2, 5, 6, 11, 3, 4],
        [60, 80, 60, 80, 60, 80],
        undefined,
        undefined,
        ["2026-03-01", "2026-03-01", "2026-04-01", "2026-04-01", "2026-05-01", "2026-05-01"],
      ],
      gives: [
        ["group", "lame", "seen", "share", "low", "high"],
        ["ewes", 11, 180, about(0.0611111111), about(0.020837331), about(0.1660263584)],
        ["lambs", 20, 240, about(0.0833333333), about(0.0326197746), about(0.1968471329)],
        ["all", 31, 420, about(0.0738095238), about(0.0291051557), about(0.1748146956)],
      ],
    },
    {
      shows: "Two rows that cannot be used: a group without its name, and more lame than seen",
      call: [
        ["ewes", "", "rams"],
        [2, 1, 9],
        [40, 20, 8],
      ],
      gives: [
        ["group", "lame", "seen", "share", "low", "high"],
        ["ewes", 2, 40, 0.05, about(0.0138206674), about(0.1650387737)],
        ["all", 2, 40, 0.05, about(0.0138206674), about(0.1650387737)],
        [
          "2 rows left out; the first to mend: groups, row 2: it is blank, but the row holds a record; enter the name of a group",
          "",
          "",
          "",
          "",
          "",
        ],
      ],
    },
    {
      call: [["rams"], [9], [8]],
      gives: problem("lame: 9 is more than the 8 seen; enter the lame sheep among those seen"),
    },
  ],
});
