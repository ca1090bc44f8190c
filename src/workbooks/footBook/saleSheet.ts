import { saleCheckFunction } from "../../../functions/dates/saleCheck.ts";
import type { SheetPlan } from "../writing/authorWorkbook.ts";
import { listLooks, writeList } from "../writing/writeList.ts";
import type { BookContent } from "./bookContent.ts";
import { holdInDoubt, room, sheetNames } from "./bookTables.ts";
import { orSeeProblems } from "./formulas.ts";

const headings = 6;
const answers = 2;

/** Tags on the left, clear or hold on the right. */
export const saleSheet = ({ saleDate, saleTags }: BookContent): SheetPlan => ({
  name: sheetNames.sale,
  write(sheet, nameCell) {
    listLooks(saleCheckFunction).forEach((look, step) => {
      sheet.columnLook(answers + step, answers + step, look);
    });
    sheet.widths(26, 3, 24, 24, 32, 13);
    sheet.dress({ top: 0, left: 0, bottom: headings - 1, right: 5 }, "note");
    sheet.title("Sale check");
    sheet.put({ row: 1, column: 0 }, `Type or paste the tags, and the day they go. ${holdInDoubt}`);
    sheet.put({ row: 2, column: 0 }, "Day of the sale", "strong");
    sheet.put({ row: 2, column: 2 }, saleDate ?? { formula: "as_of" }, "fieldDate");
    nameCell("sale_date", sheetNames.sale, { top: 2, left: 2, bottom: 2, right: 2 });
    sheet.accept(
      { top: 2, left: 2, bottom: 2, right: 2 },
      { of: { date: ["DATE(1990,1,1)", "DATE(2100,12,31)"] }, words: "Type a date, such as 2026-03-14." },
    );
    const bottom = headings + room.sale;
    const n = headings + 2;
    // Without the star one spreadsheet does not find words that a function gave.
    const counted = (word: string) => `COUNTIF($D$${n}:$D$${bottom + 1},"${word}*")`;
    sheet.put(
      { row: 3, column: 0 },
      {
        formula: `COUNTA(SaleList[Tag])&" tags: "&${counted("clear")}&" clear, "&${counted("hold")}&" to hold, "&${counted("no treatment recorded")}&" in no record"`,
      },
      "strong",
    );
    sheet.put({ row: headings - 1, column: 0 }, "For sale", "question");
    sheet.put({ row: headings, column: 0 }, "Tag", "heading");
    const tags = { top: headings + 1, left: 0, bottom, right: 0 };
    sheet.dress(tags, "typedText");
    sheet.emphasize(tags, [`LEN($A${n})>0`, "line"], [`LEN($A${n - 1})>0`, "next"]);
    saleTags.forEach((tag, place) => {
      sheet.put({ row: headings + 1 + place, column: 0 }, tag);
    });
    sheet.table("SaleList", { ...tags, top: headings }, false);
    writeList(sheet, {
      question: "May they go",
      row: headings,
      column: answers,
      rows: room.sale,
      longest: room.sale,
      gives: saleCheckFunction,
      formula: orSeeProblems(
        "FOOT.SALECHECK(SaleList[Tag],sale_date,Cases[Tag],Cases[Treated],Cases[Withdrawal days])",
      ),
      strong: `LEFT($D${n},4)="hold"`,
    });
    sheet.freezeAt({ row: headings + 1, column: 0 });
    sheet.protect();
    sheet.print({
      repeat: [headings, headings],
    });
  },
});
