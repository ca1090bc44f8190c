import { dayOf } from "../../src/cells/day.ts";
import { Problem } from "../../src/cells/problem.ts";
import { recordCheck } from "../../src/core/records/recordCheck.ts";
import { type ReportLine, reportLines } from "../../src/core/records/reportLines.ts";
import { defineFunction } from "../../src/definition/defineFunction.ts";
import { problem } from "../../src/definition/problemExamples.ts";
import { day } from "../../src/reading/days.ts";
import { countFrom } from "../../src/reading/numbers.ts";
import { block, oneOr, oneOrNone } from "../../src/reading/parameter.ts";
import { asHandedOver } from "../../src/reading/words.ts";
import { table } from "../../src/writing/result.ts";
import { cautions } from "../cautions.ts";
import { sources } from "../sources.ts";

export const recordCheckFunction = defineFunction({
  name: "RECORDCHECK",
  summary:
    "Looks through treatment records for slips of the hand, and says row, column, what is wrong and how to mend it.",
  questions: [
    "check my treatment records for mistakes",
    "find missing tags and wrong dates",
    "which treatments have no withdrawal days",
    "find records entered twice",
    "ready for an inspector or an assurance audit",
  ],
  notes: [
    "Columns are known by plain words in their headings, in any order: tag, group, number treated, seen lame, treatment started, date treated, sound on, left flock, lesion, reason, foot, score, weight, product, batch, dose, withdrawal days, clear date, recheck, looked again; and by those of a medicine book, such as identity of animals, date treatment finished (the day withdrawal runs from) or WD. The first lines say what each heading was taken for.",
    "Rows are counted within the rows given, where row 1 is the first, or from first_row: with 5 for records that begin in row 5 of the sheet, its own rows are named. Whole blank rows are skipped. Nothing is changed.",
    "Looked for: missing tags and dates, tags that cannot be, zeros lost at the front, tags that may be one animal, groups treated without their number, dates in the future, dates in the wrong order, dates and numbers kept as text, lesions that are unknown, in doubt or misspelt, unknown feet, scores outside 0 to 6, weights outside 1 to 200 kg, doses outside 0.05 to 60 ml, withdrawal days that are missing or outside 0 to 365, clear dates that are too early, and records entered twice.",
    "A row that names a group in place of a tag is a treatment of that group, and needs the number treated; a column called Animals is taken for that number, and one called Animal for the tag. Tags that may be one animal are told of once, where the later one first stands.",
    "Where there is a column for product or dose, a row with neither needs no withdrawal days, unless there is a column for seen lame too and the day of treatment is filled in.",
    "Two records are the same when every checked column agrees.",
  ],
  parameters: {
    headings: block(asHandedOver, "The heading row"),
    rows: block(asHandedOver, "The records under it, the same columns"),
    as_of: oneOrNone(day, "Dates after this day are in the future; usually TODAY()"),
    first_row: oneOr(countFrom(1, "rows"), 1, "Row of the sheet in which the first record stands"),
  },
  result: table<ReportLine>(
    "nothing to say",
    ["row", "count", ({ row }) => row],
    ["column", "text", ({ column }) => column],
    ["what", "text", ({ what }) => what],
    ["how to mend it", "text", ({ mend }) => mend],
  ),
  caution: cautions.recordCheck,
  sources: [sources.practice, sources.iso11784],
  compute: ({ headings, rows, as_of, first_row: firstRow }, origin) => {
    const [heading = []] = headings;
    if (headings.length !== 1)
      throw new Problem(`${headings.length} rows were given; give the one heading row`, { argument: "headings" });
    return reportLines(
      recordCheck(heading, rows, { asOf: as_of, dayOffset: origin.dayOffset, firstRow }),
      as_of !== undefined,
    );
  },
  examples: [
    {
      shows: "Six rows, one blank",
      call: [
        [["Ear tag", "Date treated", "Lesion", "Dose (ml)", "Withdrawal days", "Notes"]],
        [
          ["041", dayOf("2026-02-10"), "scald", 6, 28, "left"],
          ["042", "12/3", "limping", "7.5", null, null],
          [null, null, null, null, null, null],
          [null, dayOf("2026-03-20"), "CODD", 80, 28, null],
          [43, dayOf("2026-02-12"), "footrot", 7, 28, null],
          ["041", dayOf("2026-02-10"), "ID", 6, 28, "again"],
        ],
        dayOf("2026-03-14"),
      ],
      gives: [
        ["row", "column", "what", "how to mend it"],
        ["", "Ear tag", "checked as: tag", ""],
        ["", "Date treated", "checked as: treated", ""],
        ["", "Lesion", "checked as: lesion", ""],
        ["", "Dose (ml)", "checked as: dose", ""],
        ["", "Withdrawal days", "checked as: withdrawal days", ""],
        ["", "Notes", "not checked: the heading is not known", ""],
        [2, "Date treated", '"12/3" is not a date', "enter a real date, or text such as 2026-03-14"],
        [
          2,
          "Lesion",
          '"limping" is not a lesion known here',
          "use the usual name of a lesion, such as scald or footrot, or other",
        ],
        [2, "Dose (ml)", "the number 7.5 kept as text", "enter it again as a number"],
        [
          2,
          "Withdrawal days",
          "a treatment without withdrawal days",
          "enter the days from data sheet or vet; 0 only if it says so or no medicine was given",
        ],
        [4, "Ear tag", "no tag in a row that holds a record", "enter the tag of the animal"],
        [4, "Date treated", "20 Mar 2026 is in the future", "look at day, month and year again"],
        [4, "Dose (ml)", "80 is not from 0.05 to 60", "look at it again; it is meant in ml"],
        [
          5,
          "Ear tag",
          "zeros at the front may be lost: 43 among tags such as 043",
          "enter it as text, 043, if that is the tag",
        ],
        [6, "Ear tag", "the same record as row 1", "delete one of the two if it was entered twice"],
      ],
    },
    {
      shows: "The rows of the sheet named, for records that begin in its row 5",
      call: [
        [["Tag", "Date treated", "Withdrawal days"]],
        [
          ["042", dayOf("2026-02-10"), 28],
          ["O42", dayOf("2026-02-12"), 28],
        ],
        dayOf("2026-03-14"),
        5,
      ],
      gives: [
        ["row", "column", "what", "how to mend it"],
        ["", "Tag", "checked as: tag", ""],
        ["", "Date treated", "checked as: treated", ""],
        ["", "Withdrawal days", "checked as: withdrawal days", ""],
        [6, "Tag", "it may be 042, row 5", "look at both, and write one animal's tag in one way"],
      ],
    },
    {
      shows: "Nothing wrong, but the day and a column are missing",
      call: [[["Clear", "Treated", "Tag"]], [[dayOf("2026-03-11"), dayOf("2026-02-10"), "042"]]],
      gives: [
        ["row", "column", "what", "how to mend it"],
        ["", "Clear", "checked as: clear date", ""],
        ["", "Treated", "checked as: treated", ""],
        ["", "Tag", "checked as: tag", ""],
        [
          "",
          "",
          "there is no column for withdrawal days, so missing ones are not found",
          'give that column the heading "withdrawal days"',
        ],
        ["", "", "dates in the future are not looked for", "give as_of, usually TODAY()"],
        ["", "", "nothing found wrong in 1 record", ""],
      ],
    },
    {
      call: [[["Field", "Weather"]], [["north", "wet"]]],
      gives: problem(
        'headings: none of "Field", "Weather" is known; use headings such as tag, date treated, lesion, withdrawal days',
      ),
    },
    {
      call: [[["Tag", "Treated"]], [["042"]]],
      gives: problem("rows: the width in columns is 1, that of the headings 2; give both the same columns"),
    },
  ],
});
