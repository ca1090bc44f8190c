import { saleCheckFunction } from "../../../functions/dates/saleCheck.ts";
import { saleList } from "../tables/saleList.ts";
import type { SheetPlan } from "../writing/authorWorkbook.ts";
import { dressColumns, placeList, writeList } from "../writing/placeList.ts";
import { placeTable, writeTable } from "../writing/placeTable.ts";
import { oneCell } from "../writing/references.ts";
import { rules } from "../writing/rules.ts";
import type { BookContent } from "./bookContent.ts";
import { holdInDoubt, sheetNames } from "./bookSheets.ts";
import { orSeeProblems } from "./formulas.ts";

const headings = 6;
const tags = placeTable(sheetNames.sale, saleList, { row: headings, column: 0 });
const answers = placeList(sheetNames.sale, saleCheckFunction, { row: headings, column: 2 });
const day = { row: 2, column: 2 };

/** Tags on the left, clear or hold on the right. */
export const saleSheet = ({ saleDate, saleTags }: BookContent): SheetPlan => ({
  name: sheetNames.sale,
  write(sheet, nameCell) {
    dressColumns(sheet, answers);
    sheet.widths(26, 3, 24, 24, 32, 13);
    sheet.dress({ top: 0, left: 0, bottom: headings - 1, right: 5 }, "note");
    sheet.title("Sale check");
    sheet.put({ row: 1, column: 0 }, `Type or paste the tags, and the day they go. ${holdInDoubt}`);
    sheet.put({ row: 2, column: 0 }, "Day of the sale", "strong");
    sheet.put(day, saleDate ?? { formula: "as_of" }, "fieldDate");
    nameCell("sale_date", sheetNames.sale, day);
    sheet.accept(oneCell(day), rules.day);
    // Without the star one spreadsheet does not find words that a function gave.
    const counted = (word: string) => `COUNTIF(${answers.range("answer", saleList.room)},"${word}*")`;
    sheet.put(
      { row: 3, column: 0 },
      {
        formula: `COUNTA(SaleList[Tag])&" tags: "&${counted("clear")}&" clear, "&${counted("hold")}&" to hold, "&${counted("no treatment recorded")}&" in no record"`,
      },
      "strong",
    );
    sheet.put({ row: headings - 1, column: 0 }, "For sale", "question");
    writeTable(
      sheet,
      saleList,
      tags,
      saleTags.map((tag) => ({ tag })),
    );
    sheet.emphasize(tags.rows, [`LEN(${tags.cell("tag")})>0`, "line"], [`LEN(${tags.above("tag")})>0`, "next"]);
    writeList(sheet, answers, {
      question: "May they go",
      rows: saleList.room,
      longest: saleList.room,
      formula: orSeeProblems(
        "FOOT.SALECHECK(SaleList[Tag],sale_date,Cases[Tag],Cases[Treated],Cases[Withdrawal days])",
      ),
      strong: (cell) => `LEFT(${cell("answer")},4)="hold"`,
    });
    sheet.freezeAt({ row: headings + 1, column: 0 });
    sheet.protect();
    sheet.print({ repeat: [headings, headings] });
  },
});
