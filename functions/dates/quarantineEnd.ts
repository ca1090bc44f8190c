import { dayOf } from "../../src/cells/day.ts";
import { atRow } from "../../src/core/dates/clearDates.ts";
import { quarantineEnd } from "../../src/core/dates/quarantineEnd.ts";
import { defineFunction } from "../../src/definition/defineFunction.ts";
import { problem } from "../../src/definition/problemExamples.ts";
import { day } from "../../src/reading/days.ts";
import { daysBetween } from "../../src/reading/numbers.ts";
import { column, gappedColumnOrNone, oneOr } from "../../src/reading/parameter.ts";
import { alongside } from "../../src/writing/result.ts";
import { sources } from "../sources.ts";

export const quarantineEndFunction = defineFunction({
  name: "QUARANTINEEND",
  summary: "The first day that bought-in sheep may join the flock.",
  questions: [
    "when does quarantine end",
    "when may bought sheep join the flock",
    "new case in quarantine, what now",
    "new sheep",
    "isolation of new sheep",
  ],
  notes: [
    "The day of arrival is day 0: sheep that come on a Sunday and stay apart for 28 days may join on the Sunday four weeks on.",
    "The count starts again on the day of the last new case. Give the latest one.",
    "Look at every foot before they join; the end of the days does not make them sound.",
    "A column of arrivals gives a column, and blank rows stay blank. A row with a date that cannot be read is refused, and no row has an answer until it is mended.",
  ],
  parameters: {
    arrived: column(day, "Day they arrived (a cell or a column)"),
    days: oneOr(daysBetween(1, 365), 28, "Days to keep them apart"),
    last_new_case: gappedColumnOrNone(day, "Day of the last new case among them; blank when none"),
  },
  result: alongside("quarantine ends", "date"),
  caution: undefined,
  sources: [sources.quarantineWeeks, sources.practice],
  compute: ({ arrived, days, last_new_case }) =>
    arrived.map((date, index) => atRow(index, () => quarantineEnd(date, days, last_new_case?.[index]))),
  examples: [
    { shows: "Arrived on 1 Mar 2026", call: [dayOf("2026-03-01")], gives: dayOf("2026-03-29") },
    {
      shows: "A new case on 10 Mar 2026",
      call: [dayOf("2026-03-01"), 28, dayOf("2026-03-10")],
      gives: dayOf("2026-04-07"),
    },
    {
      shows: "Three weeks, a column with a blank row",
      call: [[dayOf("2028-02-10"), null, dayOf("2026-03-01")], 21, [null, null, dayOf("2026-03-05")]],
      gives: [[dayOf("2028-03-02")], [""], [dayOf("2026-03-26")]],
    },
    {
      call: [dayOf("2026-03-01"), 28, dayOf("2026-02-03")],
      gives: problem(
        "last_new_case: 3 Feb 2026 is before they arrived on 1 Mar 2026; mend the date, or leave it blank when there was no new case since",
      ),
    },
    {
      shows: "The date of a case in the place of the days",
      call: [dayOf("2026-03-01"), dayOf("2026-03-10")],
      gives: problem("days: 46091 is above 365; enter a whole number of days from 1 to 365"),
    },
  ],
});
