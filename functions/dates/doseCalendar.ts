import { dayOf } from "../../src/cells/day.ts";
import { type DoseDay, doseCalendar } from "../../src/core/dates/doseCalendar.ts";
import { defineFunction } from "../../src/definition/defineFunction.ts";
import { problem } from "../../src/definition/problemExamples.ts";
import { day } from "../../src/reading/days.ts";
import { daysBetween } from "../../src/reading/numbers.ts";
import { one } from "../../src/reading/parameter.ts";
import { table } from "../../src/writing/result.ts";
import { cautions } from "../cautions.ts";
import { sources } from "../sources.ts";

export const doseCalendarFunction = defineFunction({
  name: "DOSECALENDAR",
  summary: "The days of a course of vaccine or other doses, up to a last day.",
  questions: ["when is the next vaccine due", "vaccination calendar", "dates of booster doses"],
  notes: [
    "The second dose comes second_after_days after the first; every later one repeat_every_days after the one before.",
    "The intervals come from the data sheet. Where it asks for no second dose, give the repeat interval in both places.",
    "Doses up to and on the last day are listed.",
  ],
  parameters: {
    first: one(day, "Day of the first dose"),
    second_after_days: one(daysBetween(1, 3650), "Days from the first to the second dose, from the data sheet"),
    repeat_every_days: one(daysBetween(1, 3650), "Days between later doses, from the data sheet"),
    until: one(day, "Last day to list"),
  },
  result: table<DoseDay>(
    "no doses",
    ["dose number", "count", ({ dose }) => dose],
    ["date", "date", ({ date }) => date],
  ),
  caution: cautions.courses,
  sources: [sources.practice],
  compute: ({ first, second_after_days, repeat_every_days, until }) =>
    doseCalendar(first, second_after_days, repeat_every_days, until),
  examples: [
    {
      shows: "Second dose after 42 days, then every 182 days",
      call: [dayOf("2026-03-01"), 42, 182, dayOf("2027-06-30")],
      gives: [
        ["dose number", "date"],
        [1, dayOf("2026-03-01")],
        [2, dayOf("2026-04-12")],
        [3, dayOf("2026-10-11")],
        [4, dayOf("2027-04-11")],
      ],
    },
    {
      shows: "The last day is the day of the second dose",
      call: [dayOf("2026-03-01"), 28, 365, dayOf("2026-03-29")],
      gives: [
        ["dose number", "date"],
        [1, dayOf("2026-03-01")],
        [2, dayOf("2026-03-29")],
      ],
    },
    {
      call: [dayOf("2026-03-01"), 42, 182, dayOf("2026-02-28")],
      gives: problem("until: 28 Feb 2026 is before the first dose on 1 Mar 2026; enter a later day"),
    },
    {
      call: [dayOf("2026-03-01"), 42, 0, dayOf("2027-03-01")],
      gives: problem("repeat_every_days: 0 is below 1; enter a whole number of days from 1 to 3650"),
    },
    {
      call: [dayOf("2026-03-01"), [null], 182, dayOf("2027-03-01")],
      gives: problem("second_after_days: it is blank; enter a whole number of days from 1 to 3650"),
    },
  ],
});
