import { dayOf } from "../../src/cells/day.ts";
import { Doubt } from "../../src/cells/doubt.ts";
import { defineFunction } from "../../src/definition/defineFunction.ts";
import { problem } from "../../src/definition/problemExamples.ts";
import { day } from "../../src/reading/days.ts";
import { wholeDays } from "../../src/reading/numbers.ts";
import { doubtColumn, oneOr } from "../../src/reading/parameter.ts";
import { alongside } from "../../src/writing/result.ts";
import { sources } from "../sources.ts";

export const recheckDueFunction = defineFunction({
  name: "RECHECKDUE",
  summary: "The day to look at a treated animal again.",
  questions: ["when to look again", "recheck date", "follow-up after treatment"],
  notes: ["A column of dates gives a column. Blank rows stay blank. A row whose date cannot be read says so in words."],
  parameters: {
    treated: doubtColumn(day, "Date of treatment (a cell or a column)", { faults: "keep in rows" }),
    after_days: oneOr(wholeDays, 7, "Days until the second look"),
  },
  result: alongside("look again on", "date"),
  caution: undefined,
  sources: [sources.practice],
  compute: ({ treated, after_days }) =>
    treated.map((date) => (date instanceof Doubt ? date.sentence : date + after_days)),
  examples: [
    { shows: "Seven days on", call: [dayOf("2026-02-10")], gives: dayOf("2026-02-17") },
    {
      shows: "A column with a blank row, ten days on",
      call: [[dayOf("2026-02-24"), null, "2028-02-24"], 10],
      gives: [[dayOf("2026-03-06")], [""], [dayOf("2028-03-05")]],
    },
    { shows: "A blank cell stays blank", call: [null], gives: "" },
    {
      shows: "A date as text costs only its own row",
      call: [[dayOf("2026-02-24"), "10.2.26"]],
      gives: [[dayOf("2026-03-03")], ['"10.2.26" is not a date; enter a real date, or text such as 2026-03-14']],
    },
    {
      call: ["10.2.26"],
      gives: problem('treated: "10.2.26" is not a date; enter a real date, or text such as 2026-03-14'),
    },
  ],
});
