import type { SheetPlan } from "../writing/authorWorkbook.ts";
import type { ComparisonContent } from "./comparisonContent.ts";
import { sheetNames } from "./comparisonTables.ts";

const headingRow = 4;
const headings = ["File", "Flock", "Used", "Records", "To mend", "What to know"] as const;

/** Which files the rows came from, which could not be used, and why. */
export const booksSheet = ({ books }: ComparisonContent): SheetPlan => ({
  name: sheetNames.books,
  write(sheet) {
    sheet.widths(36, 26, 8, 10, 10, 84);
    sheet.title("Books");
    const used = books.filter((book) => book.used).length;
    sheet.put(
      { row: 1, column: 0 },
      books.length === 0
        ? "No files were read: the rows were typed. soundfold collate reads a folder of flock foot books and lists them here."
        : `${books.length} files were read; ${used} were used, ${books.length - used} could not be.`,
      "subtitle",
    );
    sheet.put(
      { row: 2, column: 0 },
      "To mend: things that the check of the records found; they stand on the sheet Problems of that book.",
      "note",
    );
    sheet.putRow({ row: headingRow, column: 0 }, headings, "heading");
    const rows = Math.max(books.length, 1);
    const area = { top: headingRow, left: 0, bottom: headingRow + rows, right: headings.length - 1 };
    sheet.dress({ ...area, top: headingRow + 1 }, "words");
    sheet.dress({ ...area, top: headingRow + 1, left: 2, right: 4 }, "wordsCentre");
    books.forEach(({ file, flock, used: usedHere, records, toMend, words }, place) => {
      const cells = [file, flock ?? null, usedHere ? "yes" : "no", records ?? null, toMend ?? null, words];
      sheet.putRow({ row: headingRow + 1 + place, column: 0 }, cells);
    });
    sheet.table("Books", area, false);
    sheet.emphasize(
      { ...area, top: headingRow + 1 },
      [`$C${headingRow + 2}="no"`, "strong"],
      [`LEN($A${headingRow + 2})>0`, "line"],
    );
    sheet.freezeAt({ row: headingRow + 1, column: 0 });
    sheet.protect();
    sheet.print({ sideways: true, cells: `$A$1:$F$${headingRow + 1 + rows}`, repeat: [headingRow, headingRow] });
  },
});
