import { execFileSync } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { unzipSync } from "fflate";
import { readFootBook } from "../../src/templates/flockComparison/collate/readFootBook.ts";
import { walkXml } from "../../src/workbook/xml/walkXml.ts";
import { inventBook, makeFootBook } from "../templates/makeFootBook.ts";
import type { BenchReport } from "./report.ts";

const few = 20;
const many = 200;
const spoiled = 5;
const casesEach = 300;
const reader = fileURLToPath(new URL("./readFolder.ts", import.meta.url));

/** Books of 300 cases each, five of them spoiled: memory against the number of books, and time against bare parsing. */
export async function bench(): Promise<BenchReport> {
  const folder = mkdtempSync(join(tmpdir(), "soundfold-bench-"));
  try {
    const books: string[] = [];
    for (let place = 0; place < many; place++) {
      const path = join(folder, `book-${String(place).padStart(3, "0")}.xlsx`);
      const bytes = await makeFootBook(inventBook(place, casesEach));
      writeFileSync(path, place % (many / spoiled) === 7 ? bytes.slice(0, bytes.length / 2) : bytes);
      books.push(path);
    }
    const [small, large] = [run(books.slice(0, few)), run(books)];
    const sample = books
      .filter((_, place) => place % (many / spoiled) !== 7)
      .slice(0, few)
      .map((path) => readFileSync(path));
    const reading = timeOf(() => sample.forEach((bytes) => void readFootBook(bytes)));
    const parsing = timeOf(() => sample.forEach(parseOnly));
    const row = (count: number, { used, peak, seconds }: Run) => ({
      books: String(count),
      used: String(used),
      "peak memory": `${Math.round(peak / 1e6)} MB`,
      "time per book": `${((seconds / count) * 1000).toFixed(1)} ms`,
    });
    return {
      title: "Collating foot books",
      rows: [row(few, small), row(many, large)],
      notes: [
        `${casesEach} cases a book, ${spoiled} of ${many} books cut in half. Peak memory of ${many} books is ${(large.peak / small.peak).toFixed(2)} times that of ${few}.`,
        `Reading a book took ${(reading / parsing).toFixed(2)} times as long as merely unzipping and parsing the same parts (${((parsing / few) * 1000).toFixed(1)} ms a book).`,
      ],
    };
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

interface Run {
  readonly used: number;
  /** Bytes. */
  readonly peak: number;
  readonly seconds: number;
}

const run = (paths: readonly string[]): Run =>
  JSON.parse(
    execFileSync(process.execPath, ["--import", import.meta.resolve("tsx"), reader], {
      input: paths.join("\n"),
      encoding: "utf8",
    }),
  );

const needed = /^xl\/(workbook\.xml|sharedStrings\.xml|worksheets\/sheet\d+\.xml|tables\/.*\.xml|.*\.rels)$/;

function parseOnly(bytes: Uint8Array): void {
  const parts = unzipSync(bytes, { filter: ({ name }) => needed.test(name) });
  for (const [name, content] of Object.entries(parts))
    walkXml(name, new TextDecoder().decode(content), { open: () => undefined, text: () => undefined });
}

function timeOf(work: () => void): number {
  work();
  const times = Array.from({ length: 5 }, () => {
    const begun = process.cpuUsage();
    work();
    const { user, system } = process.cpuUsage(begun);
    return (user + system) / 1e6;
  });
  return times.sort((one, other) => one - other)[2] ?? 0;
}
