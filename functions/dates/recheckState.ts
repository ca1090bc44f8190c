import { dayOf } from "../../src/cells/day.ts";
import { Problem } from "../../src/cells/problem.ts";
import { recheckStates } from "../../src/core/dates/recheckStates.ts";
import { settledLooks } from "../../src/core/dates/settledLooks.ts";
import { defineFunction } from "../../src/definition/defineFunction.ts";
import { problem } from "../../src/definition/problemExamples.ts";
import { day, done } from "../../src/reading/days.ts";
import { gappedDoubtColumn, gappedDoubtColumnOrNone, one } from "../../src/reading/parameter.ts";
import { tag } from "../../src/reading/words.ts";
import { alongside } from "../../src/writing/result.ts";
import { sources } from "../sources.ts";
import { treatedAgainNotes } from "./treatedAgainNotes.ts";

export const recheckStateFunction = defineFunction({
  name: "RECHECKSTATE",
  summary: "Whether a second look is done, due or overdue, in words.",
  questions: ["is the recheck overdue", "has she been looked at again", "state of follow-up"],
  notes: [
    "done takes the date of the second look, or yes or no. A look dated after as_of was not done yet on that day.",
    "Blank where no second look is due. A row with a cell that cannot be read says so in words, unless the look is done.",
    ...treatedAgainNotes,
  ],
  parameters: {
    due: gappedDoubtColumn(day, "Day of the second look (a cell or a column)", { faults: "keep in rows" }),
    done: gappedDoubtColumn(done, "When it was done, or yes or no; blank while it is not", { faults: "keep in rows" }),
    as_of: one(day, "The day to say it for, usually TODAY()"),
    tags: gappedDoubtColumnOrNone(tag, "Tags, the same rows"),
    treated: gappedDoubtColumnOrNone(day, "Day of treatment, the same rows"),
  },
  result: alongside("second look", "text"),
  caution: undefined,
  sources: [sources.practice],
  compute: ({ due, done, as_of, tags, treated }) => {
    if ((tags === undefined) !== (treated === undefined))
      throw new Problem("it is left out; give tags and treated together, or neither", {
        argument: tags === undefined ? "tags" : "treated",
      });
    const looks = tags && treated && settledLooks({ tags, due, done, treated }, as_of);
    return recheckStates(due, done, as_of, looks);
  },
  examples: [
    { shows: "Three days before", call: [dayOf("2026-03-14"), null, dayOf("2026-03-11")], gives: "due in 3 days" },
    { shows: "On the day", call: [dayOf("2026-03-14"), null, dayOf("2026-03-14")], gives: "due today" },
    { shows: "Two days after", call: [dayOf("2026-03-14"), null, dayOf("2026-03-16")], gives: "2 days overdue" },
    {
      shows: "Looked at on 15 Mar 2026",
      call: [dayOf("2026-03-14"), dayOf("2026-03-15"), dayOf("2026-03-16")],
      gives: "done",
    },
    {
      shows: "A column with a row that needs no second look",
      call: [[dayOf("2026-03-14"), null, dayOf("2026-03-17")], ["yes", null, null], dayOf("2026-03-16")],
      gives: [["done"], [""], ["due in 1 day"]],
    },
    {
      shows: "A day that cannot be read costs only its own row",
      call: [[dayOf("2026-03-14"), "14/3"], [null, null], dayOf("2026-03-16")],
      gives: [["2 days overdue"], ['"14/3" is not a date; enter a real date, or text such as 2026-03-14']],
    },
    {
      shows:
        "042 is treated again on 16 Mar 2026, which stands for the look of 14 Mar; that of O41, a tag only like 041, stands for none",
      call: [
        [dayOf("2026-03-14"), dayOf("2026-03-14"), dayOf("2026-03-23"), dayOf("2026-03-24")],
        [null, null, null, null],
        dayOf("2026-03-18"),
        ["041", "042", "042", "O41"],
        [dayOf("2026-03-07"), dayOf("2026-03-07"), dayOf("2026-03-16"), dayOf("2026-03-17")],
      ],
      gives: [["4 days overdue"], ["treated again"], ["due in 5 days"], ["due in 6 days"]],
    },
    {
      call: [[dayOf("2026-03-14")], [null], dayOf("2026-03-18"), ["041"]],
      gives: problem("treated: it is left out; give tags and treated together, or neither"),
    },
    {
      call: [dayOf("2026-03-14"), "perhaps", dayOf("2026-03-16")],
      gives: problem('done: "perhaps" is not a date; enter the date it was done, or yes or no'),
    },
  ],
});
