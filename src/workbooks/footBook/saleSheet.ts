import { saleCheckFunction } from "../../../functions/dates/saleCheck.ts";
import type { Area } from "../../workbook/address.ts";
import { saleList } from "../tables/saleList.ts";
import type { SheetPlan } from "../writing/authorWorkbook.ts";
import { sayWhenMissing } from "../writing/missingFunctions.ts";
import { dressColumns, placeList, summaryOf, writeList } from "../writing/placeList.ts";
import { placeTable, writeTable } from "../writing/placeTable.ts";
import { fixedArea, oneCell, rowCell } from "../writing/references.ts";
import { rules } from "../writing/rules.ts";
import type { BookContent } from "./bookContent.ts";
import { holdInDoubt, sheetNames } from "./bookSheets.ts";

const headings = 6;
const tags = placeTable(sheetNames.sale, saleList, { row: headings, column: 0 });
const answers = placeList(sheetNames.sale, saleCheckFunction, { row: headings, column: 3 });
const day = { row: 2, column: 2 };
/** One answer in front of the list, two questions more behind it, and right of the printed page what they are read from. */
const mayGo = 2;
const lame = 7;
const left = 8;
const readFrom = { [lame]: 10, [left]: 11 } as const;
const cellsIn = (column: number): Area => ({
  top: headings + 1,
  left: column,
  bottom: headings + saleList.room,
  right: column,
});

/**
 * The sale check's own answer to another question: a row that says yes to it is handed over as a treatment that is not
 * over on the day, so that tags that may be one animal, and rows that cannot be read, hold here as they do there.
 */
const heldBy = (treated: string, days: string): string =>
  `INDEX(FOOT.SALECHECK(SaleList[Tag],sale_date,case_tag,${treated},${days}),0,2)`;

// What is neither clear nor in no record is held, whatever it says.
const decided =
  'IF(LEN(sale_clear)=0,"",IF(ISNA(MATCH(LEFT(sale_lame,3),{"cle","no "},0)),"no: lame, or may be",IF(LEFT(sale_clear,4)="hold","no: medicine",IF(LEFT(sale_gone,4)="hold","no: gone",IF(LEFT(sale_clear,5)="clear","yes","in no record: right tag?")))))';

/** Tags on the left, and for each whether it may go: clear of medicine, not lame, and still there. */
export const saleSheet = ({ saleDate, saleTags }: BookContent): SheetPlan => ({
  name: sheetNames.sale,
  write(sheet, nameCell) {
    dressColumns(sheet, answers);
    sheet.widths(22, 2, 23, 25, 21, 52, 8, 15, 15, 3, 21, 21);
    sheet.dress({ top: 0, left: 0, bottom: headings - 1, right: left }, "note");
    sheet.title("May they go");
    sayWhenMissing(sheet, { row: 0, column: 3 });
    sheet.put({ row: 1, column: 0 }, `Type or paste the tags, and the day they go. ${holdInDoubt}`);
    sheet.put({ row: 2, column: 0 }, "Day of the sale", "strong");
    sheet.put(day, saleDate ?? { formula: "as_of" }, "fieldDate");
    sheet.put(
      { row: 2, column: 3 },
      "Look at each as it is loaded: a sheep that is lame, or walks in pain, is not fit to travel. In doubt ask your vet.",
    );
    nameCell("sale_date", sheetNames.sale, day);
    sheet.accept(oneCell(day), rules.day);
    // Without the star one spreadsheet does not find words that a formula gave.
    const counted = (word: string) => `COUNTIF(${fixedArea(cellsIn(mayGo))},"${word}*")`;
    sheet.put(
      { row: 3, column: 0 },
      {
        formula: summaryOf(sheet.edition, answers, {
          filled: "answer",
          numbers: `COUNTA(SaleList[Tag])&" tags: "&${counted("yes")}&" may go, "&${counted("no:")}&" may not, "&${counted("in no record")}&" in no record"`,
        }),
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
    const { bottom } = tags.area;
    // Not by a formula for its last row: a general library cannot open a workbook that has one, and others fill this book.
    const printed = headings + Math.max(30, saleTags.length + 10);
    const notPrinted = fixedArea({ ...tags.area, top: printed + 1 });
    const under = { top: bottom + 1, left: 0, bottom: bottom + 2000, right: 0 };
    sheet.put(
      { row: 4, column: 0 },
      {
        formula: `IF(COUNTA(${fixedArea(under)})>0,COUNTA(${fixedArea(under)})&" tags stand below row ${bottom + 1}, where the list ends: they are NOT checked.",IF(COUNTA(${notPrinted})>0,"Printed up to row ${printed + 1}: choose all rows and print the selection.",""))`,
      },
      "careHeading",
    );
    writeList(sheet, answers, {
      question: "Clear of medicine",
      rows: saleList.room,
      fits: true,
      formula: 'FOOT.SALECHECK(SaleList[Tag],sale_date,case_tag,treated_on,withdrawal_days,"whole days",group_treated)',
      strong: (cell) => `LEFT(${cell("answer")},4)="hold"`,
    });
    const at = (column: number) => ({ row: headings, column });
    for (const [column, name, question, formula] of [
      [lame, "sale_lame", "Lame then", heldBy("IF(still_lame=1,sale_date,case_over)", "still_lame")],
      [left, "sale_gone", "Gone by then", heldBy('IF(LEN(left_on)>0,sale_date,"")', 'IF(LEN(left_on)>0,1,"")')],
    ] as const) {
      const from = readFrom[column];
      sheet.put({ row: headings - 1, column }, question, "question");
      sheet.put(at(column), "answer", "workedHeading");
      const word = `LEFT(${name},3)`;
      const said = `IF(LEN(sale_clear)=0,"",IF(${word}="cle","no",IF(${word}="no ","not recorded","yes, or may be")))`;
      sheet.put({ row: headings + 1, column }, { formula: said, array: cellsIn(column) });
      sheet.put({ row: headings - 1, column: from }, `${question}: read from`, "note");
      sheet.put(at(from), { list: formula, room: { rows: saleList.room + 1, columns: 1 } }, "worked");
    }
    const answered = answers.at.column + saleCheckFunction.result.headings.indexOf("answer");
    for (const [name, column] of [
      ["sale_clear", answered],
      ["sale_lame", readFrom[lame]],
      ["sale_gone", readFrom[left]],
    ] as const)
      nameCell(name, sheet.name, cellsIn(column));
    sheet.put({ row: headings - 1, column: mayGo }, "All together", "question");
    sheet.put(at(mayGo), "may it go", "workedHeading");
    const answersIn = cellsIn(mayGo);
    sheet.put({ row: answersIn.top, column: mayGo }, { formula: decided, array: answersIn });
    const first = (column: number): string => rowCell({ row: headings + 1, column });
    const rows = { top: headings + 1, bottom };
    sheet.emphasize(
      { ...rows, left: mayGo, right: mayGo },
      [`LEFT(${first(mayGo)},2)="no"`, "strong"],
      [`LEN(${first(mayGo)})>0`, "line"],
    );
    sheet.emphasize({ ...rows, left: lame, right: left }, [`LEN(${first(lame)})>0`, "line"]);
    sheet.freezeAt({ row: headings + 1, column: 0 });
    sheet.protect();
    sheet.print({ sideways: true, upTo: { row: printed, column: left }, repeat: [headings - 1, headings] });
  },
});
