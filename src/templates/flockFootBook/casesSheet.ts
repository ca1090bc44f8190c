import { mostMl } from "../../core/dosing/mostMl.ts";
import { columnLetters } from "../../workbook/address.ts";
import type { SheetPlan } from "../authoring/authorWorkbook.ts";
import { cutOff } from "../authoring/cutOff.ts";
import type { Look } from "../authoring/looks.ts";
import type { Rule } from "../authoring/sheetAuthor.ts";
import type { BookContent } from "./bookContent.ts";
import { caseHeadings, firstRecord, headingRow, room, sheetNames } from "./bookTables.ts";
import { type caseWorked, lameOn, lookedOn, orSeeProblems, workedColumn, workedLetters } from "./formulas.ts";
import { writeRecords } from "./writeRecords.ts";

type Heading = (typeof caseHeadings)[number];

interface Typed {
  readonly width: number;
  readonly look: Look;
  readonly rule?: Rule;
}

const pastDay = (what: string): Rule => ({
  of: { date: ["DATE(1990,1,1)", "as_of"] },
  words: `Type the day ${what}, such as 2026-03-14; not a day to come.`,
});
const listed = (list: string, what: string, lenient = false): Rule => ({
  of: { list },
  words: lenient ? `${what} is not in the list on the sheet Settings. Use it all the same?` : what,
  lenient,
});

const typed: Readonly<Record<Heading, Typed>> = {
  "Seen lame": { width: 12, look: "typedDate", rule: pastDay("she was seen lame") },
  Treated: { width: 12, look: "typedDate", rule: pastDay("of the last dose") },
  Tag: { width: 19, look: "typedText" },
  Group: { width: 20, look: "typed", rule: listed("group_list", "This group", true) },
  // Several feet, two lesions or one in doubt stand in no list, and the functions read them.
  Foot: {
    width: 7,
    look: "typedCount",
    rule: {
      of: { list: "foot_list" },
      words: "The foot: LF, RF, LH, RH or all; several as LF, RH. Use it all the same?",
      lenient: true,
    },
  },
  Lesion: {
    width: 19,
    look: "typed",
    rule: {
      of: { list: "lesion_list" },
      words:
        "Not in the list; what is none of them is other. Two as scald + footrot, or one not sure as scald?, will do. Use it all the same?",
      lenient: true,
    },
  },
  Score: { width: 8, look: "typedCount", rule: { of: { whole: ["0", "6"] }, words: "Type the score, 0 to 6." } },
  Treatment: { width: 18, look: "typed", rule: listed("treatment_list", "This treatment", true) },
  Medicine: {
    width: 14,
    look: "typed",
    rule: listed(
      "medicine_list",
      "Type this medicine on the sheet Settings first, with its numbers from the data sheet.",
    ),
  },
  "Dose ml": {
    width: 8,
    look: "typedCount",
    rule: { of: { number: ["0.05", `${mostMl}`] }, words: `Type the ml given, 0.05 to ${mostMl}.` },
  },
  "Withdrawal days": {
    width: 12,
    look: "typedCount",
    rule: {
      of: { whole: ["0", "365"] },
      words: "Type the days, 0 to 365, without a unit.",
      hint: "From the data sheet or the vet. For meat; milk has days of its own. 0 only when that is written there, or when no medicine was given; a blank is never read as 0.",
    },
  },
  "Given by": { width: 12, look: "typed", rule: listed("given_by_list", "This name", true) },
  Batch: { width: 10, look: "typedText" },
  "Recheck due": {
    width: 12,
    look: "typedDate",
    rule: {
      of: { date: ["DATE(1990,1,1)", "DATE(2100,12,31)"] },
      words: "Type a date, such as 2026-03-14.",
      hint: "Only if it is another day than usual (Settings).",
    },
  },
  "Looked again": { width: 12, look: "typedDate", rule: pastDay("she was looked at again") },
  "Sound on": {
    width: 12,
    look: "typedDate",
    rule: { ...pastDay("she was found sound"), hint: "In each row of the case, when she was treated more than once." },
  },
  "Left flock": {
    width: 12,
    look: "typedDate",
    rule: {
      ...pastDay("she was sold or culled, or died"),
      hint: "When she was sold or culled, or died: in each row of a case that was still open.",
    },
  },
  Note: { width: 18, look: "typed" },
};

interface Worked {
  readonly heading: string;
  readonly width: number;
  readonly formula: string;
  readonly look: Look;
}

// One formula answers for the whole column, and it reaches just as far as the records do.
const workedColumns: Readonly<Record<(typeof caseWorked)[number], Worked>> = {
  clear: {
    heading: "Clear for food from",
    width: 13,
    formula: "FOOT.CLEARDATE(Cases[Treated],Cases[Withdrawal days])",
    look: "workedDate",
  },
  lookAgain: {
    heading: "Look again on",
    width: 12,
    formula:
      'FOOT.RECHECKDUE(IF(Cases[Recheck due]<>"",Cases[Recheck due]-recheck_days,IF(Cases[Treated]="","",Cases[Treated])),recheck_days)',
    look: "workedDate",
  },
  secondLook: {
    heading: "Second look",
    width: 16,
    formula: `FOOT.RECHECKSTATE(${workedColumn("lookAgain")},${lookedOn},as_of)`,
    look: "worked",
  },
  caseNumber: {
    heading: "Case no.",
    width: 8,
    formula: `FOOT.CASENO(Cases[Tag],${lameOn},Cases[Tag],${lameOn},gap_days)`,
    look: "workedCount",
  },
};

/** The cases as typed, with room for more, and beside them the dates and states that follow from each row. */
export const casesSheet = ({ cases }: BookContent): SheetPlan => ({
  name: sheetNames.cases,
  write(sheet) {
    const looks = [
      ...caseHeadings.map((heading) => typed[heading].look),
      ...Object.values(workedColumns).map(({ look }) => look),
    ];
    looks.forEach((look, column) => {
      sheet.columnLook(column, column, look);
    });
    sheet.widths(
      ...caseHeadings.map((heading) => typed[heading].width),
      ...Object.values(workedColumns).map(({ width }) => width),
    );
    const last = looks.length - 1;
    sheet.dress({ top: 0, left: 0, bottom: 2, right: last }, "note");
    sheet.title("Cases");
    sheet.put(
      { row: 1, column: 0 },
      `One row for each treatment of each lame animal. Type in the next free row; the table has room for ${room.cases.toLocaleString("en")}.`,
    );
    sheet.put(
      { row: 2, column: 0 },
      `Dark headings are typed; the pale ones at the right are worked out. Where a message names a row, row 1 is the first record: it stands in row ${firstRecord + 1} of this sheet.`,
    );
    const rows = writeRecords(sheet, {
      name: "Cases",
      headings: caseHeadings,
      looks,
      records: cases,
      room: room.cases,
    });
    const n = firstRecord + 1;
    caseHeadings.forEach((heading, column) => {
      const { rule } = typed[heading];
      if (rule) sheet.accept({ ...rows, left: column, right: column }, rule);
    });
    Object.values(workedColumns).forEach(({ heading, formula, look }, place) => {
      const column = caseHeadings.length + place;
      sheet.put({ row: headingRow, column }, heading, look === "workedCount" ? "workedHeadingCentre" : "workedHeading");
      sheet.put({ row: firstRecord, column }, { formula: orSeeProblems(formula) }, look);
    });
    const [clearCell, lookCell] = [`$${workedLetters("clear")}${n}`, `$${workedLetters("secondLook")}${n}`];
    sheet.put(
      { row: 1, column: caseHeadings.length },
      {
        formula: cutOff(workedColumns.clear.formula, workedColumn("clear")),
      },
      "careHeading",
    );
    const filled = [`COUNTA($A${n}:$${columnLetters(caseHeadings.length - 1)}${n})>0`, "line"] as const;
    const worked = caseHeadings.length;
    const beside = (from: number, to: number) => ({ ...rows, left: worked + from, right: worked + to });
    sheet.emphasize(rows, filled, [`AND($C${n}="",$A${n}="",$C${n - 1}<>"")`, "next"]);
    sheet.emphasize(
      beside(0, 0),
      [`OR(AND(ISTEXT(${clearCell}),LEN(${clearCell})>0),AND(ISNUMBER(${clearCell}),${clearCell}>as_of))`, "strong"],
      filled,
    );
    sheet.emphasize(beside(1, 1), filled);
    sheet.emphasize(
      beside(2, 2),
      [`ISNUMBER(SEARCH("overdue",${lookCell}))`, "strong"],
      [`LEFT(${lookCell},4)="done"`, "weak"],
      filled,
    );
    sheet.emphasize(beside(3, 3), filled);
    sheet.freezeAt({ row: firstRecord, column: 3 });
    sheet.protect();
    sheet.print({
      sideways: true,
      repeat: [headingRow, headingRow],
    });
  },
});
