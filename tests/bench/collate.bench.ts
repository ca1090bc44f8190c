import { spawnSync } from "node:child_process";
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import ExcelJS from "exceljs";
import { unzipSync } from "fflate";
import { walkXml } from "../../src/workbook/xml/walkXml.ts";
import { readFootBook } from "../../src/workbooks/collate/readFootBook.ts";
import { inventBook, type MadeBook, makeFootBook } from "../workbooks/makeFootBook.ts";
import type { BenchReport } from "./report.ts";

const few = 20;
const many = 200;
const casesEach = 300;
const command = "dist/cli/soundfold.js";

/**
 * `soundfold collate` over folders of foot books, five of 200 spoiled, each in its own way: memory against the number of
 * books, for reading alone and with the comparison, and time against bare parsing.
 */
export async function bench(): Promise<BenchReport> {
  const folder = mkdtempSync(join(tmpdir(), "soundfold-bench-"));
  try {
    build();
    const [fewBooks, manyBooks] = [join(folder, "few"), join(folder, "many")];
    for (const books of [fewBooks, manyBooks]) mkdirSync(books);
    const sample: Uint8Array[] = [];
    for (let index = 0; index < many; index++) {
      const name = `book-${String(index).padStart(3, "0")}.xlsx`;
      const spoil =
        index % (many / spoilers.length) === 7 ? spoilers[Math.floor((index * spoilers.length) / many)] : undefined;
      const bytes = await (spoil ?? makeFootBook)(inventBook(index, casesEach));
      writeFileSync(join(manyBooks, name), bytes);
      if (index >= few) continue;
      writeFileSync(join(fewBooks, name), bytes);
      if (spoil === undefined) sample.push(bytes);
    }
    const out = join(folder, "comparison");
    const runs = { small: collate(fewBooks, `${out}-few.xlsx`), large: collate(manyBooks, `${out}-many.xlsx`) };
    // No book has gathers in that year, so that the command ends once all are read.
    const reading = {
      small: collate(fewBooks, `${out}.xlsx`, "1999"),
      large: collate(manyBooks, `${out}.xlsx`, "1999"),
    };
    const read = timeOf(() => sample.forEach((bytes) => void readFootBook(bytes))) / sample.length;
    const parsed = timeOf(() => sample.forEach(parseOnly)) / sample.length;
    const megabytes = (bytes: number): string => `${Math.round(bytes / 1e6)} MB`;
    const row = (books: number, whole: Run, readingOnly: Run) => ({
      books: String(books),
      used: String(whole.used),
      "named with the reason": String(whole.named),
      "peak memory, reading": megabytes(readingOnly.peak),
      "peak memory, with the comparison": megabytes(whole.peak),
      "time, reading": `${readingOnly.seconds.toFixed(1)} s`,
      "time, with the comparison": `${whole.seconds.toFixed(1)} s`,
    });
    const times = (large: Run, small: Run): string => (large.peak / small.peak).toFixed(2);
    return {
      title: "Collating foot books",
      rows: [row(few, runs.small, reading.small), row(many, runs.large, reading.large)],
      notes: [
        `The built command, ${casesEach} cases a book; ${spoilers.length} of ${many} books are cut in half, without the headings, no workbook, with a password, or a workbook without lists. Times are of the processor, with starting.`,
        `Peak memory of ${many} books is ${times(reading.large, reading.small)} times that of ${few} while they are read, and ${times(runs.large, runs.small)} times with the comparison, which holds values and whose long sheets are written row by row.`,
        `Reading a book took ${(read / parsed).toFixed(2)} times as long as merely unzipping and parsing the same parts (${(read * 1000).toFixed(1)} ms and ${(parsed * 1000).toFixed(1)} ms a book).`,
      ],
    };
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

type Spoil = (book: MadeBook) => Promise<Uint8Array>;

const spoilers: readonly Spoil[] = [
  async (book) => {
    const bytes = await makeFootBook(book);
    return bytes.slice(0, bytes.length / 2);
  },
  (book) => makeFootBook(book, { heading: (text) => `my ${text}` }),
  async () => Buffer.from("Farm,Lame\n"),
  // How a workbook with a password begins, and the name under which it keeps its content.
  async () => Buffer.concat([Buffer.from("d0cf11e0a1b11ae1", "hex"), Buffer.from("EncryptedPackage", "utf16le")]),
  async () => {
    const workbook = new ExcelJS.Workbook();
    workbook.addWorksheet("Fences").getCell("A1").value = "to mend";
    return new Uint8Array(await workbook.xlsx.writeBuffer());
  },
];

function build(): void {
  const { status, stderr } = spawnSync("npm", ["run", "--silent", "build:cli"], { encoding: "utf8" });
  if (status !== 0) throw new Error(`the command cannot be built: ${stderr}`);
}

interface Run {
  readonly used: number;
  readonly named: number;
  /** Bytes. */
  readonly peak: number;
  /** Of the processor. */
  readonly seconds: number;
}

const mark = "measured:";
const measuring = `process.on("exit", () => {
  const { maxRSS, userCPUTime, systemCPUTime } = process.resourceUsage();
  process.stderr.write("\\n${mark}" + JSON.stringify([maxRSS * 1024, (userCPUTime + systemCPUTime) / 1e6]));
});`;

// In a process of its own, since the peak memory of a process never goes down again.
function collate(folder: string, out: string, year?: string): Run {
  const given = [command, "collate", folder, "--out", out, ...(year === undefined ? [] : ["--year", year])];
  const imported = `data:text/javascript,${encodeURIComponent(measuring)}`;
  const { stdout, stderr, status } = spawnSync(process.execPath, ["--import", imported, ...given], {
    encoding: "utf8",
  });
  if (status !== (year === undefined ? 0 : 2)) throw new Error(`collate ended with ${status}: ${stderr}`);
  const [peak = 0, seconds = 0] = JSON.parse(stderr.slice(stderr.lastIndexOf(mark) + mark.length)) as number[];
  const used = Number(/^(\d+) of \d+ files used/m.exec(stdout)?.[1] ?? 0);
  const [, lines = ""] = /^Not used:\n((?: {2}.*\n?)*)/m.exec(stdout) ?? [];
  return { used, named: lines.split("\n").filter((line) => / {2}\S.* {2}\S/.test(line)).length, peak, seconds };
}

const needed = /^xl\/(workbook\.xml|sharedStrings\.xml|worksheets\/sheet\d+\.xml|tables\/.*\.xml|.*\.rels)$/;

function parseOnly(bytes: Uint8Array): void {
  const parts = unzipSync(bytes, { filter: ({ name }) => needed.test(name) });
  for (const [name, content] of Object.entries(parts))
    walkXml(name, new TextDecoder().decode(content), { open: () => undefined, text: () => undefined });
}

function timeOf(work: () => void): number {
  work();
  const times = Array.from({ length: 7 }, () => {
    const begun = process.cpuUsage();
    work();
    const { user, system } = process.cpuUsage(begun);
    return (user + system) / 1e6;
  });
  return times.sort((one, other) => one - other)[3] ?? 0;
}
