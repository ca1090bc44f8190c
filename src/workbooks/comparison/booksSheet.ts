import { books as booksTable } from "../tables/flocks.ts";
import type { SheetPlan } from "../writing/authorWorkbook.ts";
import { placeTable, writeTable } from "../writing/placeTable.ts";
import type { ComparisonContent } from "./comparisonContent.ts";
import { sheetNames } from "./placedComparison.ts";

const headingRow = 4;

/** Which files the rows came from, which could not be used, and why. */
export const booksSheet = ({ books }: ComparisonContent): SheetPlan => ({
  name: sheetNames.books,
  write(sheet) {
    sheet.title("Books");
    const used = books.filter((book) => book.used).length;
    sheet.put(
      { row: 1, column: 0 },
      `${books.length} files were read; ${used} were used, ${books.length - used} could not be.`,
      "subtitle",
    );
    sheet.put(
      { row: 2, column: 0 },
      "To mend: things that the check of the records found; they stand on the sheet Problems of that book.",
      "note",
    );
    sheet.rowsAside(headingRow + 1);
    const placed = placeTable(sheet.name, booksTable, { row: headingRow, column: 0 }, books.length);
    const lines = books.map((book) => ({ ...book, used: book.used ? "yes" : "no" }));
    writeTable(sheet, booksTable, placed, lines, { widths: true });
    sheet.emphasize(placed.rows, [`${placed.cell("used")}="no"`, "strong"], [`LEN(${placed.cell("file")})>0`, "line"]);
    sheet.freezeAt({ row: headingRow + 1, column: 0 });
    sheet.protect();
    const { bottom: row, right: column } = placed.area;
    sheet.print({ sideways: true, upTo: { row, column }, repeat: [headingRow, headingRow] });
  },
});
