import { dayOf } from "../../src/cells/day.ts";
import { type RepeatAnimal, repeatAnimals } from "../../src/core/animals/repeatAnimals.ts";
import { defineFunction } from "../../src/definition/defineFunction.ts";
import { problem } from "../../src/definition/problemExamples.ts";
import { day } from "../../src/reading/days.ts";
import { countFrom } from "../../src/reading/numbers.ts";
import { oneOr, oneOrNone } from "../../src/reading/parameter.ts";
import { table } from "../../src/writing/result.ts";
import { sources } from "../sources.ts";
import { caseNotes, gapDays, recordColumns } from "./caseColumns.ts";

export const repeatAnimalsFunction = defineFunction({
  name: "REPEATS",
  summary: "The animals that were lame again and again: how many cases each had, most first.",
  questions: [
    "which sheep keep going lame",
    "which ewes to cull for lameness",
    "animals with two or more cases this season",
    "repeat offenders",
  ],
  notes: [
    ...caseNotes,
    "from and until look at a case's first record: a case that began before from is not counted, even if it runs on. The two days themselves count. Left out, the cases of all years count together: give from to look at one season.",
    'An animal whose cases are not known, since a record of it cannot be read, stands first with the row to mend, where it may have enough of them; "any animal" stands above it for records without a readable tag. So does one that has enough cases only together with another whose tag is alike: see TAGCHECK.',
    "Two cases in a season are commonly a reason to consider culling; the choice is yours and your vet's.",
  ],
  parameters: {
    ...recordColumns,
    at_least: oneOr(countFrom(1, "cases"), 2, "Fewest cases to be listed"),
    gap_days: gapDays,
    from: oneOrNone(day, "First day of the season"),
    until: oneOrNone(day, "Last day of the season"),
  },
  result: table<RepeatAnimal>(
    "no animal has so many cases",
    ["tag", "text", ({ tag }) => tag],
    ["cases", "count", ({ cases }) => cases],
    ["first", "date", ({ first }) => first],
    ["last", "date", ({ last }) => last],
  ),
  caution: undefined,
  sources: [sources.promptTreatment, sources.practice],
  compute: ({ tags, dates, at_least, gap_days, from, until }, origin) =>
    repeatAnimals({ tags, dates }, { atLeast: at_least, gapDays: gap_days, from, until }, (index) => origin.row(index)),
  examples: [
    {
      shows: "Two cases or more",
      call: [
        ["042", "043", null, "042", "042", "044", "044"],
        [
          dayOf("2026-02-10"),
          dayOf("2026-02-11"),
          null,
          dayOf("2026-02-20"),
          dayOf("2026-03-20"),
          dayOf("2026-01-05"),
          dayOf("2026-04-01"),
        ],
      ],
      gives: [
        ["tag", "cases", "first", "last"],
        ["044", 2, dayOf("2026-01-05"), dayOf("2026-04-01")],
        ["042", 2, dayOf("2026-02-10"), dayOf("2026-03-20")],
      ],
    },
    {
      shows: "Two tags that may be one animal have two cases together",
      call: [
        ["062", "62"],
        [dayOf("2026-01-05"), dayOf("2026-03-20")],
      ],
      gives: [
        ["tag", "cases", "first", "last"],
        ["62", "not known", "it may be 062: 2 cases together; look at both tags", ""],
      ],
    },
    {
      shows: "From 1 Feb: the January case of 044 no longer counts",
      call: [
        ["042", "042", "044", "044"],
        [dayOf("2026-02-10"), dayOf("2026-03-20"), dayOf("2026-01-05"), dayOf("2026-04-01")],
        undefined,
        undefined,
        dayOf("2026-02-01"),
      ],
      gives: [
        ["tag", "cases", "first", "last"],
        ["042", 2, dayOf("2026-02-10"), dayOf("2026-03-20")],
      ],
    },
    {
      shows: "A record without a readable day may be a second case; one without a tag may be anybody's",
      call: [
        ["042", "042", "044", "044", null],
        [dayOf("2026-02-10"), "20/3", dayOf("2026-01-05"), dayOf("2026-04-01"), dayOf("2026-04-02")],
      ],
      gives: [
        ["tag", "cases", "first", "last"],
        [
          "any animal",
          "not known",
          "tags, row 5: no tag in a row that holds a record; enter the tag of the animal",
          "",
        ],
        ["042", "not known", 'dates, row 2: "20/3" is not a date; enter a real date, or text such as 2026-03-14', ""],
        ["044", 2, dayOf("2026-01-05"), dayOf("2026-04-01")],
      ],
    },
    {
      shows: "None",
      call: [["042"], [dayOf("2026-02-10")]],
      gives: [
        ["tag", "cases", "first", "last"],
        ["no animal has so many cases", "", "", ""],
      ],
    },
    {
      call: [["042"], [dayOf("2026-02-10")], 2, 14, dayOf("2026-06-01"), dayOf("2026-02-01")],
      gives: problem("from: 1 Jun 2026 is after until, 1 Feb 2026; change them over"),
    },
    {
      call: [["042"], [dayOf("2026-02-10")], 0],
      gives: problem("at_least: 0 is below 1; enter a whole number of cases, 1 or more"),
    },
  ],
});
