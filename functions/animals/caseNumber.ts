import { dayOf } from "../../src/cells/day.ts";
import { nothingToReport } from "../../src/cells/problem.ts";
import { caseNumbers } from "../../src/core/animals/caseNumbers.ts";
import { defineFunction } from "../../src/definition/defineFunction.ts";
import { nothing, problem } from "../../src/definition/problemExamples.ts";
import { day } from "../../src/reading/days.ts";
import { doubtColumn } from "../../src/reading/parameter.ts";
import { tag } from "../../src/reading/words.ts";
import { alongside } from "../../src/writing/result.ts";
import { sources } from "../sources.ts";
import { alikeNote, caseNotes, gapDays, recordColumns } from "./caseColumns.ts";

export const caseNumberFunction = defineFunction({
  name: "CASENO",
  summary: "Which case of its animal a day belongs to: 1 for the first case, 2 for the second.",
  questions: [
    "is this the first or second time she is lame",
    "case number of a treatment",
    "has this sheep been lame before",
  ],
  notes: [
    "The day must lie in a case, from its first record to its last. Otherwise the answer is #N/A with the nearest case.",
    "tag and date may be columns: one call then answers for every row, much faster than a call a row. A row without a case says so in words.",
    "A record of the animal without a readable day leaves its case numbers not known; one without a readable tag may be any animal's, and is told of from its own day on. The answer is then words.",
    ...caseNotes,
    alikeNote,
  ],
  parameters: {
    tag: doubtColumn(tag, "Tag of the animal, or a column of tags", { group: "asked", faults: "keep in rows" }),
    date: doubtColumn(day, "The day to look up, or a column of days", { group: "asked", faults: "keep in rows" }),
    ...recordColumns,
    gap_days: gapDays,
  },
  result: alongside("case", "count", "asked"),
  caution: undefined,
  sources: [sources.practice],
  compute: ({ tag, date, tags, dates, gap_days }, origin) =>
    caseNumbers({ tags: tag, days: date }, { tags, dates }, gap_days, (index) => origin.row(index)).map((answer) => {
      if (typeof answer === "number") return answer;
      if (answer.asked !== undefined && origin.single("asked"))
        throw nothingToReport(answer.none, { argument: answer.asked });
      return answer.none;
    }),
  examples: [
    {
      shows: "The second time that 042 is lame",
      call: [
        "042",
        dayOf("2026-03-20"),
        ["042", "043", null, "042", "042"],
        [dayOf("2026-02-10"), dayOf("2026-02-11"), null, dayOf("2026-02-20"), dayOf("2026-03-20")],
      ],
      gives: 2,
    },
    {
      shows: "A column of questions, one of them blank; gap of 5 days",
      call: [
        ["042", null, "043", "044"],
        [dayOf("2026-02-20"), null, dayOf("2026-02-12"), dayOf("2026-02-12")],
        ["042", "043", "042"],
        [dayOf("2026-02-10"), dayOf("2026-02-11"), dayOf("2026-02-20")],
        5,
      ],
      gives: [
        [2],
        [""],
        ["043 has no case on 12 Feb 2026; the nearest is case 1, on 11 Feb 2026"],
        ["044 has no record"],
      ],
    },
    {
      shows: "A day in no case",
      call: ["042", dayOf("2026-02-25"), ["042", "042"], [dayOf("2026-02-10"), dayOf("2026-02-20")]],
      gives: nothing("date: 042 has no case on 25 Feb 2026; the nearest is case 1, from 10 Feb 2026 to 20 Feb 2026"),
    },
    {
      shows: "An animal in no record",
      call: ["044", dayOf("2026-02-25"), ["042"], [dayOf("2026-02-10")]],
      gives: nothing("tag: 044 has no record"),
    },
    {
      shows: "A record without a readable day, and one without a tag",
      call: [
        ["042", "043", "044"],
        [dayOf("2026-02-20"), dayOf("2026-02-12"), dayOf("2026-02-20")],
        ["042", "042", "043", null, "044"],
        ["10/2/26", dayOf("2026-02-20"), dayOf("2026-02-12"), dayOf("2026-02-16"), dayOf("2026-02-20")],
      ],
      gives: [
        ['dates, row 1: "10/2/26" is not a date; enter a real date, or text such as 2026-03-14'],
        [1],
        ["1 by the records with tags; tags, row 4: no tag in a row that holds a record; enter the tag of the animal"],
      ],
    },
    {
      call: ["042", "10/2/26", ["042"], [dayOf("2026-02-10")]],
      gives: problem('date: "10/2/26" is not a date; enter a real date, or text such as 2026-03-14'),
    },
  ],
});
