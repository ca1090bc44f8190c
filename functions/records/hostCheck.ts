import { dayOf } from "../../src/cells/day.ts";
import { Problem } from "../../src/cells/problem.ts";
import { type HostLine, hostCheck } from "../../src/core/records/hostCheck.ts";
import { defineFunction } from "../../src/definition/defineFunction.ts";
import { problem } from "../../src/definition/problemExamples.ts";
import { block } from "../../src/reading/parameter.ts";
import { asHandedOver } from "../../src/reading/words.ts";
import { table } from "../../src/writing/result.ts";
import { sources } from "../sources.ts";

export const hostCheckFunction = defineFunction({
  name: "HOSTCHECK",
  summary: "How this spreadsheet hands over blank cells and dates, and what that means for your formulas.",
  questions: ["are blank cells counted as 0 here", "does SCOREPREV need a guard", "does this workbook count from 1904"],
  notes: [
    "Give cells that are truly empty. A range of two or more is best: some spreadsheets hand over a lone blank cell as 0 and a blank in a range as blank.",
    "A guard is a small formula in place of the range. It turns a blank into an empty text, which every spreadsheet hands over as it is.",
    "Whether a workbook counts its days from 1904 can only be seen by you: hold the day that is read against the day that the cell shows.",
  ],
  parameters: {
    blank_cell: block(asHandedOver, "Empty cells, best two or more in a column"),
    date_cell: block(asHandedOver, "A cell that holds a date"),
  },
  result: table<HostLine>(
    "nothing to say",
    ["about", "text", ({ about }) => about],
    ["arrives as", "text", ({ arrivesAs }) => arrivesAs],
    ["what it means", "text", ({ means }) => means],
    ["what to do", "text", ({ todo }) => todo],
  ),
  caution: undefined,
  sources: [sources.ecma376dates],
  compute: ({ blank_cell, date_cell }, origin) => {
    if (date_cell.length !== 1 || date_cell[0]?.length !== 1)
      throw new Problem("a range was given; give one cell that holds a date", { argument: "date_cell" });
    return hostCheck(blank_cell.flat(), date_cell[0][0] ?? null, origin.dayOffset);
  },
  examples: [
    {
      shows: "Blank cells arrive as blanks",
      call: [["", ""], dayOf("2026-03-14")],
      gives: [
        ["about", "arrives as", "what it means", "what to do"],
        ["blank cell", "a blank", "a blank cell stays blank", "nothing"],
        ["SCOREPREV", "a blank", "it needs no guard", "nothing"],
        ["count of lame sheep", "a blank", "a missing count is seen to be missing", "nothing"],
        ["withdrawal days", "a blank", "a missing withdrawal period is seen to be missing", "nothing"],
        [
          "date cell",
          "the number 46095",
          "it is read as 14 Mar 2026, counted from 1900",
          "nothing, if the cell shows that day; if it shows 15 Mar 2030, the workbook counts from 1904: switch that off, or enter dates as text such as 2026-03-14",
        ],
      ],
    },
    {
      shows: "Blank cells arrive as 0, and the date is text",
      call: [[0, 0], "14/03/2026"],
      gives: [
        ["about", "arrives as", "what it means", "what to do"],
        [
          "blank cell",
          "0",
          "a blank cell cannot be told from a 0, if these cells are truly empty",
          'write IF(range="","",range) in place of range',
        ],
        [
          "SCOREPREV",
          "0",
          "a sheep not scored would count as score 0, which is a sound sheep",
          'write IF(range="","",range) in place of range',
        ],
        [
          "count of lame sheep",
          "0",
          "a gather whose count is missing would count as one without a lame sheep",
          'write IF(range="","",range) in place of range',
        ],
        [
          "withdrawal days",
          "0",
          "danger: a missing withdrawal period would count as 0 days, and the animal as clear",
          'write IF(range="","",range) in place of range',
        ],
        [
          "date cell",
          'text, "14/03/2026"',
          "it is refused as a date: 03/04 means two days",
          "enter it again as a real date, or as 2026-03-14",
        ],
      ],
    },
    { call: [["", 5], dayOf("2026-03-14")], gives: problem("blank_cell: it holds 5; give cells that are empty") },
    { call: [["", ""], [null]], gives: problem("date_cell: it is blank; give a cell that holds a date") },
  ],
});
