import { dayOf } from "../../src/cells/day.ts";
import { type NotClear, notClear } from "../../src/core/dates/notClear.ts";
import { defineFunction } from "../../src/definition/defineFunction.ts";
import { problem } from "../../src/definition/problemExamples.ts";
import { moment } from "../../src/reading/days.ts";
import { one } from "../../src/reading/parameter.ts";
import { table } from "../../src/writing/result.ts";
import { cautions } from "../cautions.ts";
import { sources } from "../sources.ts";
import { countingChoice, groupColumn, groupNotes, treatmentColumns, treatmentNotes } from "./treatmentColumns.ts";

const missingDays = "withdrawal_days, row 4: a treatment without withdrawal days";

const headings = ["tag", "clear date", "days to wait", "why not known"] as const;

export const notClearFunction = defineFunction({
  name: "NOTCLEAR",
  summary: "The animals that may not go for food yet, those with unknown dates first, then the latest date first.",
  questions: [
    "which sheep are still in withdrawal",
    "who is not clear today",
    "which animals must not be sold",
    "list of sheep under medicine",
  ],
  notes: [
    'An animal with a treatment that lacks its days or its date, or whose cells cannot be read, is listed first, as "not known", with the row to mend. "every animal" stands above it where a treatment that is not over has no readable tag.',
    '"every animal is clear" goes by the treatments given and no others. Where there is none, in blank columns for instance, the answer is "no treatments recorded": look whether the ranges hold your treatments.',
    "An animal is listed once, with the latest date over all of its treatments. On its clear date it is no longer listed. One that is clear itself is listed for one that is not and whose tag is alike.",
    "A treatment dated after as_of counts too: it is planned, or its date is a slip of the hand, and neither is a reason to sell.",
    ...treatmentNotes,
    ...groupNotes,
  ],
  parameters: {
    as_of: one(moment, "The day to say it for, usually TODAY()"),
    ...treatmentColumns,
    counting: countingChoice,
    groups: groupColumn,
  },
  result: table<NotClear>(
    "every animal is clear",
    ["tag", "text", (animal) => animal.tag],
    ["clear date", "date", (animal) => animal.clear],
    ["days to wait", "days", (animal) => animal.daysToWait],
    ["why not known", "text", (animal) => animal.why],
  ),
  caution: cautions.withdrawal,
  sources: [sources.fimeaWithdrawal, sources.practice],
  compute: ({ as_of, tags, treated, withdrawal_days, counting, groups }, origin) =>
    notClear(as_of, { tags, treated, withdrawalDays: withdrawal_days, groups }, counting, (index) => origin.row(index)),
  examples: [
    {
      shows: "10 Mar 2026: one not known, two waiting, one clear",
      call: [
        dayOf("2026-03-10"),
        ["041", "042", null, "043", "044"],
        [dayOf("2026-02-10"), dayOf("2026-02-10"), null, dayOf("2026-02-20"), dayOf("2026-03-01")],
        [5, 28, null, null, 28],
      ],
      gives: [
        headings,
        ["043", "not known", "", missingDays],
        ["044", dayOf("2026-03-30"), 20, ""],
        ["042", dayOf("2026-03-11"), 1, ""],
      ],
    },
    {
      shows: "On the clear date itself",
      call: [dayOf("2026-03-11"), ["042"], [dayOf("2026-02-10")], [28]],
      gives: [headings, ["every animal is clear", "", "", ""]],
    },
    {
      shows: "Blank columns, or animals without a treatment",
      call: [dayOf("2026-03-11"), ["042", null], [null, null], [null, null]],
      gives: [headings, ["no treatments recorded", "", "", ""]],
    },
    {
      shows: "Counted from the hour: clear during the day, so still listed at its start",
      call: [dayOf("2026-03-10"), ["042"], ["2026-02-10 10:30"], [28], "from the hour"],
      gives: [headings, ["042", dayOf("2026-03-10") + 0.4375, 1, ""]],
    },
    {
      shows: "A treatment without a tag may be any animal's; days with a unit cost only their own animal",
      call: [
        dayOf("2026-03-10"),
        ["041", null, "043"],
        [dayOf("2026-02-10"), dayOf("2026-02-12"), dayOf("2026-02-10")],
        [5, 28, "28d"],
      ],
      gives: [
        headings,
        [
          "every animal",
          dayOf("2026-03-13"),
          3,
          "tags, row 2: no tag in a row that holds a record; enter the tag of the animal; it may be any animal, not clear until 13 Mar 2026",
        ],
        [
          "043",
          "not known",
          "",
          'withdrawal_days, row 3: "28d" is not a number; enter a whole number of days, 0 or more, without a unit',
        ],
      ],
    },
    {
      shows: "A letter O for a zero: the clear animal is listed for the one that is not",
      call: [dayOf("2026-03-10"), ["042", "O42"], [dayOf("2026-01-10"), dayOf("2026-02-12")], [5, 28]],
      gives: [
        headings,
        ["042", dayOf("2026-03-13"), 3, "it may be O42, row 2, not clear until 13 Mar 2026"],
        ["O42", dayOf("2026-03-13"), 3, ""],
      ],
    },
    {
      shows: "A group treated as a whole",
      call: [
        dayOf("2026-03-10"),
        ["041", null],
        [dayOf("2026-02-10"), dayOf("2026-03-01")],
        [5, 14],
        undefined,
        [null, "Lambs"],
      ],
      gives: [headings, ["every animal of group Lambs", dayOf("2026-03-16"), 6, ""]],
    },
    {
      call: ["soon", ["041"], [dayOf("2026-02-10")], [28]],
      gives: problem('as_of: "soon" is not a date; enter a real date, or text such as 2026-03-14'),
    },
  ],
});
