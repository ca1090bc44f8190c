import { mkdirSync, writeFileSync } from "node:fs";
import { inventBook, makeFootBook } from "../../workbooks/makeFootBook.ts";

// `npx tsx tests/bench/scale/makeBooks.ts FOLDER BOOKS CASES` writes invented foot books, the same ones each time. Run by hand.

const [folder = ".", books = "2000", cases = "100"] = process.argv.slice(2);
mkdirSync(folder, { recursive: true });
for (let index = 0; index < Number(books); index++)
  writeFileSync(
    `${folder}/book-${String(index).padStart(4, "0")}.xlsx`,
    await makeFootBook(inventBook(index, Number(cases))),
  );
