import { dayOf } from "../../src/cells/day.ts";
import { sheepDays } from "../../src/core/watching/sheepDays.ts";
import { defineFunction } from "../../src/definition/defineFunction.ts";
import { nothing, problem } from "../../src/definition/problemExamples.ts";
import { day } from "../../src/reading/days.ts";
import { count } from "../../src/reading/numbers.ts";
import { column, one } from "../../src/reading/parameter.ts";
import { single } from "../../src/writing/result.ts";
import { sources } from "../sources.ts";

export const sheepDaysFunction = defineFunction({
  name: "SHEEPDAYS",
  summary: "How many sheep-days a period had, from head counts: the sheep that were there, day by day, added up.",
  questions: ["how many sheep days", "animal days at risk", "head counts over the year"],
  notes: [
    "Each head count holds until the next one, the last until the day given. That day itself is not counted, and later counts are not used.",
    "The dates may be in any order, but no day may have two counts.",
    "With NEWCASERATE, leave lame sheep out of the counts only if your new cases leave them out too.",
  ],
  parameters: {
    dates: column(day, "Day of each head count"),
    heads: column(count("sheep"), "Sheep counted on that day, the same rows"),
    until: one(day, "The day on which the period ends"),
  },
  result: single("sheep-days", "count"),
  caution: undefined,
  sources: [sources.practice],
  compute: ({ dates, heads, until }) => sheepDays(dates, heads, until),
  examples: [
    {
      shows: "420 ewes for 31 days, then 400 for 28; one row left blank",
      call: [[dayOf("2026-01-01"), null, dayOf("2026-02-01")], [420, null, 400], dayOf("2026-03-01")],
      gives: 24_220,
    },
    { shows: "One count", call: [dayOf("2026-01-01"), 100, dayOf("2027-01-01")], gives: 36_500 },
    {
      call: [[dayOf("2026-02-01")], [420], dayOf("2026-01-01")],
      gives: problem("until: 1 Jan 2026 is before the first head count on 1 Feb 2026; enter a later day"),
    },
    {
      call: [[dayOf("2026-01-01"), dayOf("2026-01-01")], [300, 120], dayOf("2026-02-01")],
      gives: problem(
        "dates, row 2: 1 Jan 2026 has two head counts; keep one of them, or add the groups together first",
      ),
    },
    {
      call: [[dayOf("2026-01-01"), dayOf("2026-02-01")], [420, null], dayOf("2026-03-01")],
      gives: problem("heads, row 2: it is blank, but the row holds a record; enter a whole number of sheep, 0 or more"),
    },
    { call: [[null], [null], dayOf("2026-03-01")], gives: nothing("dates: there is no head count") },
  ],
});
