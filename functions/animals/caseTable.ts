import { dayOf } from "../../src/cells/day.ts";
import { type Case, cases } from "../../src/core/episodes/cases.ts";
import { defineFunction } from "../../src/definition/defineFunction.ts";
import { problem } from "../../src/definition/problemExamples.ts";
import { gappedColumnOrNone } from "../../src/reading/parameter.ts";
import { footList } from "../../src/reading/words.ts";
import { table } from "../../src/writing/result.ts";
import { sources } from "../sources.ts";
import { caseNotes, gapDays, recordColumns } from "./caseColumns.ts";

export const caseTableFunction = defineFunction({
  name: "CASETABLE",
  topic: "animals",
  summary: "Gathers treatment records into cases: one row a case, with its first and last day and its treatments.",
  questions: [
    "how many cases of lameness, not treatments",
    "list the cases of each sheep",
    "when did each case start and end",
    "which foot was lame in each case",
  ],
  notes: [
    ...caseNotes,
    'With feet, each foot has its own cases. A record that names two feet counts for both, and one that names none stands as "not recorded".',
    "Cases are numbered for each animal in order of their first day. Without feet the foot stays blank.",
  ],
  parameters: {
    ...recordColumns,
    gap_days: gapDays,
    feet: gappedColumnOrNone(footList, "Foot or feet of each record, such as LF or LF, RH; the same rows"),
  },
  result: table<Case>(
    "no records",
    ["tag", "text", ({ tag }) => tag.shown],
    ["case", "count", ({ number }) => number],
    ["first", "date", ({ first }) => first],
    ["last", "date", ({ last }) => last],
    ["treatments", "count", ({ treatments }) => treatments],
    ["foot", "text", ({ foot }) => foot],
  ),
  caution: undefined,
  sources: [sources.practice],
  compute: ({ tags, dates, gap_days, feet }) => cases(tags, dates, gap_days, feet),
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
      call: [
        ["042", null],
        [dayOf("2026-02-10"), dayOf("2026-02-14")],
      ],
      gives: problem("tags, row 2: no tag in a row that holds a record; enter the tag of the animal"),
    },
    {
      call: [["042"], [dayOf("2026-02-10")], 14, ["tail"]],
      gives: problem(
        'feet: "tail" is not a foot known here; use LF, RF, LH or RH (left fore, right fore, left hind, right hind), several as LF, RH, or all',
      ),
    },
  ],
});
