import { cases } from "../tables/cases.ts";
import type { KeyOf } from "../tables/defineTable.ts";
import type { SheetPlan } from "../writing/authorWorkbook.ts";
import type { Look } from "../writing/looks.ts";
import { sayWhenMissing } from "../writing/missingFunctions.ts";
import { type GridColumn, writeGrid } from "../writing/placeGrid.ts";
import { writeTable } from "../writing/placeTable.ts";
import type { BookContent } from "./bookContent.ts";
import { firstRecord, headingRow, sheetNames } from "./bookSheets.ts";
import { lookedOrOver } from "./formulas.ts";
import { besideCases, placedCases } from "./placedRecords.ts";

type Answer = Parameters<typeof besideCases.range>[0];

// One formula answers for the whole column, and it reaches just as far as the records do.
const whole = (heading: string, width: number, look: Look, list: string): GridColumn<Answer> => ({
  heading,
  width,
  look,
  holds: ({ place }) => (place === 0 ? { list, room: { rows: cases.room, columns: 1 } } : null),
});

const answers: Readonly<Record<Answer, GridColumn<Answer>>> = {
  clear: whole("Clear for food from", 13, "workedDate", "FOOT.CLEARDATE(Cases[Treated],Cases[Withdrawal days])"),
  // A group is not looked at one by one.
  lookAgain: whole(
    "Look again on",
    12,
    "workedDate",
    'FOOT.RECHECKDUE(IF((LEN(Cases[Tag])=0)*(LEN(Cases[Animals])>0),"",IF(LEN(Cases[Recheck due])>0,Cases[Recheck due]-recheck_days,IF(LEN(Cases[Treated])>0,Cases[Treated],""))),recheck_days)',
  ),
  secondLook: whole(
    "Second look",
    16,
    "worked",
    `FOOT.RECHECKSTATE(${besideCases.range("lookAgain")},${lookedOrOver("each_")},as_of,Cases[Tag],Cases[Treated])`,
  ),
  caseNumber: whole(
    "Case no.",
    8,
    "workedCount",
    "FOOT.CASENO(each_case_tag,each_case_day,case_tag,case_day,gap_days)",
  ),
};

/** The cases as typed, with room for more, and beside them the dates and states that follow from each row. */
export const casesSheet = ({ cases: records }: BookContent): SheetPlan => ({
  name: sheetNames.cases,
  write(sheet, nameCell) {
    const { rows: beside } = besideCases;
    cases.keys.forEach((key, column) => {
      sheet.columnLook(column, column, cases.columns[key].look);
    });
    Object.values(answers).forEach(({ look }, step) => {
      sheet.columnLook(beside.left + step, beside.left + step, look);
    });
    sheet.dress({ top: 0, left: 0, bottom: 2, right: beside.right }, "note");
    sheet.title("Cases");
    sayWhenMissing(sheet, { row: 0, column: cases.placeOf("group") });
    sheet.put(
      { row: 1, column: 0 },
      `One row for each treatment of each lame animal, or of a whole group. Type in the next free row; the table has room for ${cases.room.toLocaleString("en")}.`,
    );
    sheet.put(
      { row: 2, column: 0 },
      "Dark headings are typed; the pale ones at the right are worked out. Lists of other sheets name rows of this sheet.",
    );
    sheet.rowHeight(headingRow, 34);
    writeTable(sheet, cases, placedCases, records, { dressed: false, widths: true });
    writeGrid(sheet, besideCases, answers, { dressed: false });
    // From the first row on, beside the columns of the sheet As of, so that a list names rows of this sheet.
    for (const key of ["lesion", "medicine", "score"] as const)
      nameCell(`written_${key}`, sheet.name, { ...placedCases.column(key), top: 0 });

    const { cell, above, rows } = placedCases;
    const [first, last] = [cases.keys[0], cases.keys.at(-1)] as [KeyOf<typeof cases>, KeyOf<typeof cases>];
    const filled = [`COUNTA(${cell(first)}:${cell(last)})>0`, "line"] as const;
    sheet.emphasize(rows, filled, [`AND(${cell("tag")}="",${cell("seen")}="",${above("tag")}<>"")`, "next"]);
    const [clear, look] = [besideCases.cell("clear"), besideCases.cell("secondLook")];
    sheet.emphasize(
      besideCases.column("clear"),
      [`OR(AND(ISTEXT(${clear}),LEN(${clear})>0),AND(ISNUMBER(${clear}),${clear}>as_of))`, "strong"],
      filled,
    );
    sheet.emphasize(besideCases.column("lookAgain"), filled);
    sheet.emphasize(
      besideCases.column("secondLook"),
      [`ISNUMBER(SEARCH("overdue",${look}))`, "strong"],
      [`OR(LEFT(${look},4)="done",${look}="treated again")`, "weak"],
      filled,
    );
    sheet.emphasize(besideCases.column("caseNumber"), filled);
    sheet.freezeAt({ row: firstRecord, column: cases.placeOf("tag") + 1 });
    sheet.protect();
    sheet.print({
      sideways: true,
      repeat: [headingRow, headingRow],
      // More columns would make the letters smaller than can be read.
      upToColumn: cases.placeOf("soundOn"),
    });
  },
});
