import { expect, test } from "vitest";
import { readFootBook } from "../../src/workbooks/collate/readFootBook.ts";
import { buildWorkbook, rowsOf } from "../workbook/buildWorkbook.ts";

test("a book may hold more gathers than a call can be given at once", () => {
  const many = 130_000;
  const gathers = Array.from({ length: many }, (_, index) => {
    const row = index + 2;
    return `<row r="${row}"><c r="A${row}"><v>${45_000 + (index % 900)}</v></c><c r="B${row}"><v>20</v></c><c r="C${row}"><v>1</v></c></row>`;
  });
  const read = readFootBook(
    buildWorkbook({
      sheets: [
        { name: "Gathers", rows: rowsOf({ A1: "Date", B1: "Looked at", C1: "Lame" }) + gathers.join("") },
        { name: "Cases", rows: rowsOf({ A1: "Seen lame", B1: "Tag", A2: 45_010, B2: "ZZ 999 1" }) },
      ],
    }),
  );
  expect(read).toMatchObject({ latest: 45_899, records: many + 1, toMend: 0 });
});
