import { dayOf } from "../../src/cells/day.ts";
import { type DueLook, dueList } from "../../src/core/dates/dueList.ts";
import { defineFunction } from "../../src/definition/defineFunction.ts";
import { problem } from "../../src/definition/problemExamples.ts";
import { day, done } from "../../src/reading/days.ts";
import { nonNegative, wholeDays } from "../../src/reading/numbers.ts";
import { gappedDoubtColumn, gappedDoubtColumnOrNone, one, oneOr } from "../../src/reading/parameter.ts";
import { tag } from "../../src/reading/words.ts";
import { table } from "../../src/writing/result.ts";
import { sources } from "../sources.ts";
import { treatedAgainNotes } from "./treatedAgainNotes.ts";

export const dueListFunction = defineFunction({
  name: "DUELIST",
  summary: "The animals to look at again: overdue first, then those due soon.",
  questions: ["which sheep must I look at this week", "list of overdue rechecks", "who is due for a second look"],
  notes: [
    "Days are counted from as_of: 3 is in three days, -2 is two days overdue.",
    "A second look that is done is left out; so is one further off than ahead_days. A row whose due is blank has no second look to come.",
    'A look of which tag, day or done cannot be read stands first, as "not known" where that is so, with its row in the state.',
    "With score, of the looks of one day the highest score stands first, and before it those whose score is blank, 0 or cannot be read: a sheep that nobody scored may be the worst.",
    ...treatedAgainNotes,
  ],
  parameters: {
    as_of: one(day, "The day to say it for, usually TODAY()"),
    tags: gappedDoubtColumn(tag, "Tags in the records"),
    due: gappedDoubtColumn(day, "Day of the second look, the same rows"),
    done: gappedDoubtColumnOrNone(done, "When it was done, or yes or no; blank while it is not"),
    ahead_days: oneOr(wholeDays, 7, "How many days ahead to list"),
    treated: gappedDoubtColumnOrNone(day, "Day of treatment, the same rows"),
    score: gappedDoubtColumnOrNone(nonNegative("a lameness score"), "How lame, the same rows: worst of a day first"),
  },
  result: table<DueLook>(
    "nothing is due",
    ["tag", "text", (look) => look.tag],
    ["due", "date", (look) => look.due],
    ["days", "days", (look) => look.days],
    ["state", "text", (look) => look.state],
  ),
  caution: undefined,
  sources: [sources.practice],
  compute: ({ as_of, tags, due, done, ahead_days, treated, score }, origin) =>
    dueList(as_of, { tags, due, done, treated, score }, ahead_days, (index) => origin.row(index)),
  examples: [
    {
      shows: "16 Mar 2026: one overdue, one due soon, one done, one far off",
      call: [
        dayOf("2026-03-16"),
        ["041", "042", null, "043", "044"],
        [dayOf("2026-03-20"), dayOf("2026-03-14"), null, dayOf("2026-03-15"), dayOf("2026-04-15")],
        [null, null, null, dayOf("2026-03-15"), null],
      ],
      gives: [
        ["tag", "due", "days", "state"],
        ["042", dayOf("2026-03-14"), -2, "2 days overdue"],
        ["041", dayOf("2026-03-20"), 4, "due in 4 days"],
      ],
    },
    {
      shows: "A column of days that RECHECKDUE worked out: what it says of a date stands for the day",
      call: [
        dayOf("2026-03-16"),
        ["041", "042"],
        [dayOf("2026-03-20"), '"12/3" is not a date; enter a real date, or text such as 2026-03-14'],
      ],
      gives: [
        ["tag", "due", "days", "state"],
        ["042", "not known", "", 'due, row 2: "12/3" is not a date; enter a real date, or text such as 2026-03-14'],
        ["041", dayOf("2026-03-20"), 4, "due in 4 days"],
      ],
    },
    {
      shows: "Nothing within two days",
      call: [dayOf("2026-03-16"), ["041"], [dayOf("2026-03-20")], undefined, 2],
      gives: [
        ["tag", "due", "days", "state"],
        ["nothing is due", "", "", ""],
      ],
    },
    {
      shows: "A look without a tag and one without a readable day stand first",
      call: [dayOf("2026-03-16"), ["041", null, "043"], [dayOf("2026-03-20"), dayOf("2026-03-20"), "20/3"]],
      gives: [
        ["tag", "due", "days", "state"],
        [
          "not known",
          dayOf("2026-03-20"),
          4,
          "tags, row 2: no tag in a row that holds a record; enter the tag of the animal",
        ],
        ["043", "not known", "", 'due, row 3: "20/3" is not a date; enter a real date, or text such as 2026-03-14'],
        ["041", dayOf("2026-03-20"), 4, "due in 4 days"],
      ],
    },
    {
      shows:
        "042 was treated again on 16 Mar 2026: only the look after that is due. 043 was given two medicines: one look",
      call: [
        dayOf("2026-03-20"),
        ["042", "042", "043", "043"],
        [dayOf("2026-03-14"), dayOf("2026-03-23"), dayOf("2026-03-19"), dayOf("2026-03-19")],
        undefined,
        7,
        [dayOf("2026-03-07"), dayOf("2026-03-16"), dayOf("2026-03-12"), dayOf("2026-03-12")],
      ],
      gives: [
        ["tag", "due", "days", "state"],
        ["043", dayOf("2026-03-19"), -1, "1 day overdue"],
        ["042", dayOf("2026-03-23"), 3, "due in 3 days"],
      ],
    },
    {
      shows: "Three of one day, with scores: 042 was not scored and may be the worst, 043 is lamer than 041",
      call: [
        dayOf("2026-03-20"),
        ["041", "042", "043", "044"],
        [dayOf("2026-03-19"), dayOf("2026-03-19"), dayOf("2026-03-19"), dayOf("2026-03-18")],
        undefined,
        undefined,
        undefined,
        [2, null, 5, 1],
      ],
      gives: [
        ["tag", "due", "days", "state"],
        ["044", dayOf("2026-03-18"), -2, "2 days overdue"],
        ["042", dayOf("2026-03-19"), -1, "1 day overdue"],
        ["043", dayOf("2026-03-19"), -1, "1 day overdue"],
        ["041", dayOf("2026-03-19"), -1, "1 day overdue"],
      ],
    },
    {
      call: ["soon", ["041"], [dayOf("2026-03-20")]],
      gives: problem('as_of: "soon" is not a date; enter a real date, or text such as 2026-03-14'),
    },
  ],
});
