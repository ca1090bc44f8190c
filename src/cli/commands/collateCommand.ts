import { readdir } from "node:fs/promises";
import { join } from "node:path";
import { WorkbookProblem } from "../../workbook/workbookProblem.ts";
import { type Collated, collateBooks, type ReadBook } from "../../workbooks/collate/collateBooks.ts";
import { readFootBook } from "../../workbooks/collate/readFootBook.ts";
import type { BookLine } from "../../workbooks/comparison/comparisonContent.ts";
import { BadInput } from "../badInput.ts";
import type { Command, Terminal } from "../command.ts";
import { withPlainFileErrors } from "../fileTrouble.ts";
import { growSlowly } from "../growSlowly.ts";
import { isFolder, newFile } from "../newFile.ts";
import { nodePacking } from "../nodePacking.ts";
import { emptyFolder, writePages } from "../pageFolder.ts";
import { progressBar } from "../progressBar.ts";
import { readOptions } from "../readOptions.ts";
import { readOrdinary } from "../readOrdinary.ts";
import { targetFrom } from "../targetFrom.ts";
import { textColumns } from "../textColumns.ts";
import { today } from "../today.ts";
import { writeWhole } from "../writeWhole.ts";

/** Puts the flocks of a folder of foot books side by side. */
export const collateCommand: Command = {
  name: "collate",
  takes: "FOLDER --out FILE [--year 2026] [--target 2%] [--letters] [--pages FOLDER]",
  summary: "read every Flock foot book in a folder into one Flock comparison",
  details: `--out FILE    where to save the comparison; a file that is there already is never replaced
--year 2026   the year to compare; without it, the latest in which most books have gathers
--target 2%   the share lame to stay below, for flocks whose book has no target of its own
--letters     call the flocks A, B, C in the file; the key is printed and stands nowhere else
--pages FOLDER  also write a page for each flock into a new or empty folder, ready to send to its
              farmer: it names that flock, with --letters too, calls the others by letters, and
              holds values only

The comparison holds values, with what is done about lameness in each flock and why a figure cannot be
counted. Ranges and words allow for gathers of a flock that differ, and for flocks that do. It is read in
every spreadsheet, with or without the functions.

A file that is no foot book is named with the reason and does not stop the others.`,
  async run(given, terminal) {
    const options = {
      out: { type: "string" },
      year: { type: "string" },
      target: { type: "string" },
      letters: { type: "boolean" },
      pages: { type: "string" },
    } as const;
    const { values, positionals } = readOptions("collate", given, options, 1);
    const [folder] = positionals;
    if (!folder || values.out === undefined)
      throw new BadInput("collate needs a folder and a file to write: soundfold collate FOLDER --out FILE.xlsx");
    const year = yearFrom(values.year);
    const target = targetFrom(values.target);
    await newFile(values.out);
    if (values.pages !== undefined) await emptyFolder(values.pages, [folder]);
    growSlowly(10);
    const read = await readFolder(folder, terminal);
    const collated = collateBooks(read, { year, letters: values.letters === true, made: today(), target });
    if (!collated) throw new BadInput(nothingUsed(folder, read, year));
    terminal.progress("Writing the comparison …");
    // Writing takes half a second to load, so it is loaded only once there is something to write.
    const { flockComparison } = await import("../../workbooks/comparison/flockComparison.ts");
    const { workedOut } = await import("../../workbooks/workedOut.ts");
    const { bytes } = await workedOut(flockComparison(collated.content), nodePacking);
    terminal.progressDone();
    await writeWhole(values.out, bytes);
    const written = values.pages === undefined ? "" : await pagesOf(collated, values.pages, terminal);
    terminal.say(report(collated, values.out));
    if (written !== "") terminal.say(written);
  },
};

async function pagesOf(collated: Collated, folder: string, terminal: Terminal): Promise<string> {
  const { flockPages } = await import("../../workbooks/flockPage/flockPages.ts");
  return writePages(flockPages(collated), folder, terminal);
}

function yearFrom(text: string | undefined): number | undefined {
  if (text === undefined) return undefined;
  if (!/^(?:19|20)\d\d$/.test(text)) throw new BadInput(`"${text}" is not a year; give it as --year 2026.`);
  return Number(text);
}

// One file after the other, each forgotten but for its few numbers before the next is read.
async function readFolder(folder: string, terminal: Terminal): Promise<readonly ReadBook[]> {
  if (!(await isFolder(folder)))
    throw new BadInput(`There is no folder ${folder}; collate reads the workbooks of a folder.`);
  const entries = await withPlainFileErrors(`${folder} cannot be read`, () => readdir(folder, { withFileTypes: true }));
  // Spreadsheets leave hidden files and ~$ files beside a workbook that is open.
  const files = entries.filter(({ name }) => !name.startsWith(".") && !name.startsWith("~$"));
  if (files.length === 0) throw new BadInput(`${folder} is empty; put the flock foot books into it.`);
  const books: ReadBook[] = [];
  for (const entry of files.sort((one, other) => (one.name < other.name ? -1 : 1))) {
    terminal.progress(progressBar(books.length, files.length, entry.name));
    const read = entry.isDirectory()
      ? { reason: "It is a folder; the files in it were not read." }
      : await readOne(join(folder, entry.name));
    books.push({ file: entry.name, read });
  }
  terminal.progressDone();
  return books;
}

async function readOne(path: string): Promise<ReadBook["read"]> {
  if (!/\.xls[xm]$/i.test(path)) return { reason: "It is no .xlsx workbook." };
  try {
    return readFootBook(await readOrdinary(path, "It cannot be read"), nodePacking);
  } catch (error) {
    // One file must not stop the others, whatever is in it.
    const known = error instanceof WorkbookProblem || error instanceof BadInput;
    return { reason: known ? error.message : `Something in it is not understood (${(error as Error).message}).` };
  }
}

function nothingUsed(folder: string, read: readonly ReadBook[], year: number | undefined): string {
  const lines = read.map(({ file, read: record }) =>
    "reason" in record
      ? [file, record.reason]
      : [file, year === undefined ? "No gathers in it." : `No gathers in ${year} in it.`],
  );
  return `None of the ${read.length} files in ${folder} can be used, so nothing was written:\n${indented(lines)}`;
}

function report({ books, year, key }: Collated, output: string): string {
  const used = books.filter((book) => book.used);
  const parts = [`${used.length} of ${books.length} files used, for ${year}. The comparison: ${output}`];
  const listed = (title: string, lines: readonly BookLine[]) => {
    if (lines.length > 0) parts.push(`${title}\n${indented(lines.map(({ file, words }) => [file, words]))}`);
  };
  listed(
    "Not used:",
    books.filter((book) => !book.used),
  );
  listed(
    "Used, but:",
    used.filter(({ words }) => words !== ""),
  );
  const toMend = used.filter((book) => (book.toMend ?? 0) > 0);
  if (toMend.length > 0) {
    const lines = toMend.map(({ file, toMend: found }) => [file, `${found} ${found === 1 ? "thing" : "things"}`]);
    parts.push(`To mend, on the sheet Problems of each book:\n${indented(lines)}`);
  }
  if (key.length > 0)
    parts.push(
      `The key, which is not in the file:\n${indented(key.map(({ letter, flock, file }) => [letter, flock, file]))}`,
    );
  return parts.join("\n\n");
}

const indented = (rows: readonly (readonly string[])[]): string =>
  textColumns(rows)
    .map((line) => `  ${line}`)
    .join("\n");
