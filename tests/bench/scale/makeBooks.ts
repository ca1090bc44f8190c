import { mkdirSync, writeFileSync } from "node:fs";
import { inventBook, makeFootBook } from "../../workbooks/makeFootBook.ts";

// `npx tsx tests/bench/scale/makeBooks.ts FOLDER BOOKS CASES` writes invented foot books, the same ones each time. Run by hand.

const [folder = ".", books = "2000", cases = "100"] = process.argv.slice(2);
mkdirSync(folder, { recursive: true });
for (let place = 0; place < Number(books); place++)
  writeFileSync(
    `${folder}/book-${String(place).padStart(4, "0")}.xlsx`,
    await makeFootBook(inventBook(place, Number(cases))),
  );
