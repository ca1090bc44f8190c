import { dayOf } from "../../src/cells/day.ts";
import { clearDates, loneClearDate } from "../../src/core/dates/clearDates.ts";
import { defineFunction } from "../../src/definition/defineFunction.ts";
import { problem } from "../../src/definition/problemExamples.ts";
import { moment } from "../../src/reading/days.ts";
import { wholeDays } from "../../src/reading/numbers.ts";
import { gappedDoubtColumn, readable } from "../../src/reading/parameter.ts";
import { alongside } from "../../src/writing/result.ts";
import { cautions } from "../cautions.ts";
import { sources } from "../sources.ts";
import { blankDaysNote, countingChoice, produceNote } from "./treatmentColumns.ts";

export const clearDateFunction = defineFunction({
  name: "CLEARDATE",
  summary: "The first day a treated animal may go for food.",
  questions: [
    "when can she be sold",
    "when is the withdrawal period over",
    "when is she clear",
    "meat withdrawal date",
    "when can I eat it",
    "withdrawal",
  ],
  notes: [
    'A withdrawal period runs in 24-hour days from the last dose. "whole days" is for records without an hour: the date of treatment + the days + 1, and the date of treatment itself when the period is 0 days.',
    '"from the hour" needs the date with its time and gives the same hour, so many days later. A date without an hour is refused, because counting from midnight would be too early.',
    "Columns give a column. A row with a treatment but no days, or with days but no treatment, says so in words, and so does a row with a cell that cannot be read; a missing period is never taken as 0.",
    blankDaysNote,
    "One cell of days may stand for a whole column of dates.",
    produceNote,
    "A period in hours: divide by 24 and round up.",
  ],
  parameters: {
    treated: gappedDoubtColumn(moment, "Date of the last dose (a cell or a column)", { faults: "keep in rows" }),
    withdrawal_days: gappedDoubtColumn(
      wholeDays,
      "Withdrawal period in days (for meat, or for milk), from the data sheet or the vet",
      { repeats: true, faults: "keep in rows" },
    ),
    counting: countingChoice,
  },
  result: alongside("clear date", "date"),
  caution: cautions.withdrawal,
  sources: [sources.fimeaWithdrawal, sources.practice],
  compute: ({ treated, withdrawal_days, counting }, origin) =>
    origin.single()
      ? [loneClearDate(readable(treated[0]), readable(withdrawal_days[0]), counting)]
      : clearDates(treated, withdrawal_days, counting),
  examples: [
    { shows: "10 Feb 2026 and 28 days", call: [dayOf("2026-02-10"), 28], gives: dayOf("2026-03-11") },
    { shows: "A period of 0 days ends on the day itself", call: [dayOf("2026-02-10"), 0], gives: dayOf("2026-02-10") },
    {
      shows: "Counted from half past ten",
      call: ["2026-02-10 10:30", 28, "from the hour"],
      gives: dayOf("2026-03-10") + 0.4375,
    },
    {
      shows: "A column of dates",
      call: [
        [dayOf("2026-02-10"), null, dayOf("2028-02-15"), dayOf("2026-12-20")],
        [28, null, 14, null],
      ],
      gives: [[dayOf("2026-03-11")], [""], [dayOf("2028-03-01")], ["no withdrawal days"]],
    },
    {
      shows: "A column in which only one row is filled",
      call: [
        [null, dayOf("2026-02-10")],
        [null, null],
      ],
      gives: [[""], ["no withdrawal days"]],
    },
    { shows: "Two blank cells", call: [null, null], gives: "" },
    {
      shows: "A column with a date as text and days with a unit: each row answers for itself",
      call: [
        [dayOf("2026-02-10"), "12/3/2026", dayOf("2026-02-10")],
        [28, 28, "28d"],
      ],
      gives: [
        [dayOf("2026-03-11")],
        ['"12/3/2026" is not a date; enter a real date, or text such as 2026-03-14'],
        ['"28d" is not a number; enter a whole number of days, 0 or more, without a unit'],
      ],
    },
    {
      call: [dayOf("2026-02-10"), null],
      gives: problem(
        "withdrawal_days: it is blank, and a missing period is not 0 days; enter the days from the data sheet",
      ),
    },
    {
      call: ["12/3/2026", 28],
      gives: problem('treated: "12/3/2026" is not a date; enter a real date, or text such as 2026-03-14'),
    },
    {
      call: [dayOf("2026-02-10"), "28d"],
      gives: problem('withdrawal_days: "28d" is not a number; enter a whole number of days, 0 or more, without a unit'),
    },
    {
      call: [dayOf("2026-02-10"), 28, "from the hour"],
      gives: problem('treated: the date has no hour; enter the date with its time, or count in "whole days"'),
    },
  ],
});
