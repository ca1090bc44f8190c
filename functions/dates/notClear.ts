import { dayOf } from "../../src/cells/day.ts";
import { type NotClear, notClear } from "../../src/core/withdrawal/notClear.ts";
import { defineFunction } from "../../src/definition/defineFunction.ts";
import { problem } from "../../src/definition/problemExamples.ts";
import { moment } from "../../src/reading/days.ts";
import { one } from "../../src/reading/parameter.ts";
import { table } from "../../src/writing/result.ts";
import { cautions } from "../cautions.ts";
import { sources } from "../sources.ts";
import { countingChoice, treatmentColumns, treatmentNotes } from "./treatmentColumns.ts";

const headings = ["tag", "clear date", "days to wait", "why not known"] as const;

export const notClearFunction = defineFunction({
  name: "NOTCLEAR",
  topic: "dates",
  summary: "The animals that may not go for food yet, those with unknown dates first, then the latest date first.",
  questions: [
    "which sheep are still in withdrawal",
    "who is not clear today",
    "which animals must not be sold",
    "list of sheep under medicine",
  ],
  notes: [
    'An animal with a treatment that lacks its days or its date is listed first, as "not known", with the row to mend.',
    "An animal is listed once, with the latest date over all of its treatments. On its clear date it is no longer listed.",
    "A treatment dated after as_of counts too: it is planned, or its date is a slip of the hand, and neither is a reason to sell.",
    ...treatmentNotes,
  ],
  parameters: {
    as_of: one(moment, "The day to say it for, usually TODAY()"),
    ...treatmentColumns,
    counting: countingChoice,
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
  compute: ({ as_of, tags, treated, withdrawal_days, counting }, place) =>
    notClear(as_of, { tags, treated, withdrawalDays: withdrawal_days }, counting, (index) => place.row(index)),
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
        ["043", "not known", "", "withdrawal days missing, row 4"],
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
      shows: "Counted from the hour: clear during the day, so still listed at its start",
      call: [dayOf("2026-03-10"), ["042"], ["2026-02-10 10:30"], [28], "from the hour"],
      gives: [headings, ["042", dayOf("2026-03-10") + 0.4375, 1, ""]],
    },
    {
      call: [dayOf("2026-03-10"), ["041", null], [dayOf("2026-02-10"), dayOf("2026-02-12")], [28, 28]],
      gives: problem("tags, row 2: it is blank, but the row holds a treatment; enter the tag of the animal"),
    },
    {
      call: [dayOf("2026-03-10"), ["041", "042"], [dayOf("2026-02-10"), dayOf("2026-02-12")], [28, "28d"]],
      gives: problem(
        'withdrawal_days, row 2: "28d" is not a number; enter a whole number of days, 0 or more, without a unit',
      ),
    },
  ],
});
