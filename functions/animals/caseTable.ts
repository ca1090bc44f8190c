import { dayOf } from "../../src/cells/day.ts";
import { type CaseTable, caseTable } from "../../src/core/animals/caseTable.ts";
import { defineFunction } from "../../src/definition/defineFunction.ts";
import { problem } from "../../src/definition/problemExamples.ts";
import { gappedDoubtColumnOrNone } from "../../src/reading/parameter.ts";
import { footList } from "../../src/reading/words.ts";
import { lineTable } from "../../src/writing/result.ts";
import { sources } from "../sources.ts";
import { alikeNote, caseNotes, gapDays, recordColumns } from "./caseColumns.ts";

export const caseTableFunction = defineFunction({
  name: "CASETABLE",
  summary: "Gathers treatment records into cases: one row a case, with its first and last day and its treatments.",
  questions: [
    "how many cases of lameness, not treatments",
    "list the cases of each sheep",
    "when did each case start and end",
    "which foot was lame in each case",
  ],
  notes: [
    ...caseNotes,
    alikeNote,
    'With feet, each foot has its own cases. A record that names two feet counts for both, and one that names none stands as "not recorded".',
    'A record of which tag, day or feet cannot be read stands first, as "not known", with its row; the cases below are those that the other records show.',
    "Cases are numbered for each animal in order of their first day. Without feet the foot stays blank.",
  ],
  parameters: {
    ...recordColumns,
    gap_days: gapDays,
    feet: gappedDoubtColumnOrNone(footList, "Foot or feet of each record, such as LF or LF, RH; the same rows"),
  },
  result: lineTable<CaseTable>(
    "no records",
    ["tag", "text", ({ tag }, line) => tag(line)],
    ["case", "count", ({ number }, line) => number(line)],
    ["first", "date", ({ first }, line) => first(line)],
    ["last", "date", ({ last }, line) => last(line)],
    ["treatments", "count", ({ treatments }, line) => treatments(line)],
    ["foot", "text", ({ foot }, line) => foot(line)],
  ),
  caution: undefined,
  sources: [sources.practice],
  compute: ({ tags, dates, gap_days, feet }, origin) =>
    caseTable({ tags, dates }, gap_days, feet, (index) => origin.row(index)),
  examples: [
    {
      shows: "Four records, the same animal in two spellings, a blank row",
      call: [
        ["042", "043", null, "ZZ 0 123456 00007", "042", "999012345600007"],
        [dayOf("2026-02-10"), dayOf("2026-02-11"), null, dayOf("2026-02-12"), dayOf("2026-02-20"), dayOf("2026-03-20")],
      ],
      gives: [
        ["tag", "case", "first", "last", "treatments", "foot"],
        ["042", 1, dayOf("2026-02-10"), dayOf("2026-02-20"), 2, ""],
        ["043", 1, dayOf("2026-02-11"), dayOf("2026-02-11"), 1, ""],
        ["ZZ 0 123456 00007", 1, dayOf("2026-02-12"), dayOf("2026-02-12"), 1, ""],
        ["ZZ 0 123456 00007", 2, dayOf("2026-03-20"), dayOf("2026-03-20"), 1, ""],
      ],
    },
    {
      shows: "A shorter gap, and cases told apart by foot",
      call: [
        ["042", "042", "042"],
        [dayOf("2026-02-10"), dayOf("2026-02-14"), dayOf("2026-02-20")],
        7,
        ["LF", "LF, RH", null],
      ],
      gives: [
        ["tag", "case", "first", "last", "treatments", "foot"],
        ["042", 1, dayOf("2026-02-10"), dayOf("2026-02-14"), 2, "left fore"],
        ["042", 2, dayOf("2026-02-14"), dayOf("2026-02-14"), 1, "right hind"],
        ["042", 3, dayOf("2026-02-20"), dayOf("2026-02-20"), 1, "not recorded"],
      ],
    },
    {
      shows: "A record without a tag and one whose foot cannot be read stand first",
      call: [
        ["042", null, "043"],
        [dayOf("2026-02-10"), dayOf("2026-02-14"), dayOf("2026-02-14")],
        14,
        ["LF", "LF", "tail"],
      ],
      gives: [
        ["tag", "case", "first", "last", "treatments", "foot"],
        [
          "not known",
          "not known",
          "tags, row 2: no tag in a row that holds a record; enter the tag of the animal",
          "",
          "",
          "",
        ],
        [
          "043",
          "not known",
          'feet, row 3: "tail" is not a foot known here; use LF, RF, LH or RH (left fore, right fore, left hind, right hind), several as LF, RH, or all',
          "",
          "",
          "",
        ],
        ["042", 1, dayOf("2026-02-10"), dayOf("2026-02-10"), 1, "left fore"],
      ],
    },
    {
      call: [["042"], [dayOf("2026-02-10")], "two weeks"],
      gives: problem('gap_days: "two weeks" is not a number; enter a whole number of days, 0 or more, without a unit'),
    },
  ],
});
