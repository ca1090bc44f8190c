import { basename } from "node:path";
import { Problem } from "../../cells/problem.ts";
import { nameKey } from "../../core/words/nameKey.ts";
import type { FlockRecord } from "../../workbooks/collate/flockRecord.ts";
import { usualTarget } from "../../workbooks/usualTarget.ts";
import { BadInput } from "../badInput.ts";
import type { Command, Terminal } from "../command.ts";
import type { LeftBook } from "../compare/bookTables.ts";
import type { By, Compared } from "../compare/countFlocks.ts";
import { duckTrouble, fileInTrouble } from "../compare/duckTrouble.ts";
import type { LoadedRecords } from "../compare/loadRecords.ts";
import type { RecordFile, RecordSources } from "../compare/recordSources.ts";
import { endsIn, freePlace } from "../newFile.ts";
import { emptyFolder, writePages } from "../pageFolder.ts";
import { progressBar } from "../progressBar.ts";
import { readOptions } from "../readOptions.ts";
import { targetFrom } from "../targetFrom.ts";
import { textColumns } from "../textColumns.ts";
import { today } from "../today.ts";

const anyNumber = 1_000_000;

/** More than anyone sends out in a day; each takes a tenth of a second. */
const mostPages = 500;

/** Compares any number of flocks, whose records are counted by a database. */
export const compareCommand: Command = {
  name: "compare",
  takes:
    "RECORDS… --out FILE [--by flock] [--year 2026] [--gap-days 14] [--letters] [--pages FOLDER [--flock NAME]… [--target 2%]]",
  summary: "compare thousands of flocks from foot books, csv and Parquet files, one line a flock",
  details: `RECORDS…       foot books (.xlsx), .csv and .parquet files, or folders of them. Headings of gathers:
               Flock, Date, Group, Looked at, Lame; of cases: Flock, Tag, Seen lame, Treated. A file
               without Flock is all of one flock, named as the file is
--out FILE     .xlsx, .csv or .parquet; a file that is there already is never replaced
--by flock     one line a flock; month or group: one a month or group of each flock
--year 2026    the year to compare; without it, the latest in which most flocks have gathers
--gap-days 14  most days between two records of one case
--letters      call the flocks A, B, C in the file; the key is printed and stands nowhere else
--pages FOLDER  also write a page for each flock into a new or empty folder, ready to send to its farmer:
               it names that flock, calls the others by letters, and holds values only
--flock NAME   a page for this flock; may be given several times. Without it, for all, if they are at
               most ${mostPages}
--target 2%    on pages, the share lame to stay below for flocks whose book has no target of its own

Of two foot books of one flock the one is counted that collate keeps: of those with gathers in the year,
the one written in last. The other is named.

Ranges, words of the funnel, steadied shares with ranks, cases and signals are those that FOOT.PREVRANGE,
FUNNEL (with flocks_differ TRUE), SHRUNKPREV, CASETABLE and LAMEWATCH give. mg/PCU is counted from foot
books, as collate counts it. A blank is not known, and never none. What cannot be read is left out, and
said in the line of every flock that it may concern.

It counts with the database DuckDB (npm install @duckdb/node-api), which holds no more than 512 MB
in memory and sets the rest aside in the folder for temporary files.`,
  async run(given, terminal) {
    const text = { type: "string" } as const;
    const options = {
      out: text,
      by: text,
      year: text,
      "gap-days": text,
      letters: { type: "boolean" },
      pages: text,
      flock: { type: "string", multiple: true },
      target: text,
    } as const;
    const { values, positionals } = readOptions("compare", given, options, anyNumber);
    const { out } = values;
    if (positionals.length === 0 || out === undefined)
      throw new BadInput("compare needs records and a file to write: soundfold compare RECORDS… --out FILE.xlsx");
    if (!endsIn(out, [".xlsx", ".csv", ".parquet"]))
      throw new BadInput(`${out} must end in .xlsx, .csv or .parquet, which says how it is written.`);
    const by = byFrom(values.by ?? "flock");
    const year = wholeFrom("year", values.year, 1990, 2100);
    const gapDays = wholeFrom("gap-days", values["gap-days"], 0, 365) ?? 14;
    const letters = values.letters === true;
    if (letters && by === "group")
      throw new BadInput("--letters does not go with --by group: names of groups are a farm's own words and may tell.");
    const pages = pagesFrom(values, by);
    await freePlace(out);
    if (pages) await emptyFolder(pages.folder, positionals);
    try {
      await compare(positionals, out, { by, year, gapDays, letters, pages }, terminal);
    } catch (error) {
      if (error instanceof Problem) throw new BadInput(`The flocks cannot be compared: ${error.message}.`);
      const trouble = error instanceof BadInput ? undefined : duckTrouble(error);
      if (trouble === undefined) throw error;
      throw new BadInput(`Nothing was written. ${fileInTrouble(error) ?? "The records"}: ${trouble}`);
    }
  },
};

function byFrom(text: string): By {
  if (text === "flock" || text === "month" || text === "group") return text;
  throw new BadInput(`"${text}" is not known to --by; give flock, month or group.`);
}

function wholeFrom(option: string, text: string | undefined, least: number, most: number): number | undefined {
  if (text === undefined) return undefined;
  const number = /^\d{1,4}$/.test(text) ? Number(text) : Number.NaN;
  if (!(number >= least && number <= most))
    throw new BadInput(`--${option} takes a whole number from ${least} to ${most}, not "${text}".`);
  return number;
}

interface WantedPages {
  readonly folder: string;
  /** As they were typed; undefined for all. */
  readonly flocks: readonly string[] | undefined;
  readonly target: number;
}

function pagesFrom(
  { pages, flock, target }: { readonly pages?: string; readonly flock?: readonly string[]; readonly target?: string },
  by: By,
): WantedPages | undefined {
  if (pages === undefined) {
    const option = flock !== undefined ? "--flock" : target !== undefined ? "--target" : undefined;
    if (option !== undefined)
      throw new BadInput(`${option} is for pages; name the folder that they go into with --pages FOLDER.`);
    return undefined;
  }
  if (by !== "flock") throw new BadInput("--pages goes with --by flock, since a page is about a whole flock.");
  return { folder: pages, flocks: flock, target: targetFrom(target) ?? usualTarget };
}

/** @throws BadInput when a flock asked for is not there, or all are too many */
function placesOf(wanted: WantedPages | undefined, flocks: readonly string[]): ReadonlySet<number> {
  if (wanted === undefined) return new Set();
  if (wanted.flocks === undefined) {
    if (flocks.length > mostPages)
      throw new BadInput(
        `${grouped(flocks.length)} flocks are more than the ${mostPages} pages that are written at once; name those that are to get one with --flock NAME, as often as there are.`,
      );
    return new Set(flocks.keys());
  }
  const places = new Map(flocks.map((name, place) => [nameKey(name), place]));
  const missing = wanted.flocks.filter((name) => !places.has(nameKey(name)));
  if (missing.length > 0)
    throw new BadInput(
      `No flock in the records is called ${missing.map((name) => `"${name}"`).join(" or ")}; give --flock a name as it stands under Flock or in the settings of a foot book, in quotes where it has spaces.`,
    );
  return new Set(wanted.flocks.flatMap((name) => places.get(nameKey(name)) ?? []));
}

interface Wanted {
  readonly pages: WantedPages | undefined;
  readonly by: By;
  readonly year: number | undefined;
  readonly gapDays: number;
  readonly letters: boolean;
}

async function compare(paths: readonly string[], out: string, wanted: Wanted, terminal: Terminal): Promise<void> {
  const { withDuck } = await import("../compare/openDuck.ts");
  await withDuck(async (duck) => {
    const { BookTables } = await import("../compare/bookTables.ts");
    const { recordSources } = await import("../compare/recordSources.ts");
    const { loadRecords, unreadTagRows } = await import("../compare/loadRecords.ts");
    const { countFlocks, usualYear } = await import("../compare/countFlocks.ts");
    const { writeCompared } = await import("../compare/writeCompared.ts");
    const books = await BookTables.made(duck);
    const sources = await recordSources(
      duck,
      paths,
      (book, file) => books.add(book, file),
      (done, all, file) => terminal.progress(progressBar(done, all, file)),
    );
    const { gathers, cases } = books.asFiles();
    const all = { gathers: [...gathers, ...sources.gathers], cases: [...cases, ...sources.cases] };
    if (all.gathers.length + all.cases.length === 0)
      throw new BadInput(`None of the files can be used, so nothing was written:\n${unusedLines(sources)}`);
    terminal.progress("Reading …");
    let loaded = await loadRecords(duck, all.gathers, all.cases);
    const year = wanted.year ?? (await usualYear(duck));
    if (year === undefined)
      throw new BadInput(
        "There is no gather with a day and counts in the records, so no year is known; name one with --year 2026.",
      );
    const left = await books.leaveTwins(year);
    if (left.length > 0) loaded = await loadRecords(duck, all.gathers, all.cases);
    const kept = books.records();
    const pages = placesOf(wanted.pages, loaded.flocks);
    const counted = await countFlocks(duck, loaded, { ...wanted, year, books: kept, pages }, terminal.progress);
    if (counted.lines.length === 0) throw new BadInput(`There is nothing of ${year} in the records.`);
    const { letterFlocks } = await import("../compare/letterFlocks.ts");
    const { compared, key } = wanted.letters ? letterFlocks(counted) : { compared: counted, key: [] };
    const tags = await unreadTagRows(duck, loaded, counted.unreadTags);
    terminal.progress("Writing …");
    await writeCompared(duck, compared, wanted.by, out, today());
    terminal.progressDone();
    const written =
      wanted.pages === undefined ? "" : await writtenPages(counted, wanted.pages, { pages, books: kept }, terminal);
    terminal.say(report(compared, loaded, { ...sources, ...all, left, leftOut: books.leftOut(), tags }, out));
    if (written !== "") terminal.say(written);
    if (key.length > 0) terminal.say(`\nThe key, which is not in the file:\n${indented(key)}`);
  });
}

async function writtenPages(
  counted: Compared,
  { folder, target }: WantedPages,
  { pages, books }: { readonly pages: ReadonlySet<number>; readonly books: ReadonlyMap<string, FlockRecord> },
  terminal: Terminal,
): Promise<string> {
  const { comparedPages } = await import("../compare/comparedPages.ts");
  return writePages(comparedPages(counted, { made: today(), target, pages, books }), folder, terminal);
}

const grouped = (count: number): string => count.toLocaleString("en-GB");

const unusedLines = ({ unused }: RecordSources): string => indented(unused.map(({ file, reason }) => [file, reason]));

interface Sources extends RecordSources {
  readonly left: readonly LeftBook[];
  /** Of books that are counted. */
  readonly leftOut: readonly string[];
  /** Rows whose tag cannot be read. */
  readonly tags: readonly string[];
}

function report(compared: Compared, loaded: LoadedRecords, sources: Sources, out: string): string {
  const { flocks, examples, unnamed } = loaded;
  const counted = (count: number, what: string): string => `${grouped(count)} ${count === 1 ? what : `${what}s`}`;
  const cases =
    compared.caseRecords === 0
      ? "no case records"
      : `${counted(compared.caseRecords, "case record")}, which ${compared.caseRecords === 1 ? "is" : "are"} ${counted(compared.cases, "case")}`;
  const counts = `${counted(flocks.length, "flock")}: ${counted(compared.gathers, "day")} of gathers; ${cases}`;
  const parts = [`${counts}.\n${counted(compared.lines.length, "line")} for ${compared.year}: ${out}`];
  if (sources.unused.length > 0) parts.push(`Not used:\n${unusedLines(sources)}`);
  if (sources.left.length > 0)
    parts.push(
      `The same flock as another book, which is kept since its gathers go on as long or longer:\n${indented(sources.left.map(({ file, kept }) => [basename(file), `kept: ${basename(kept)}`]))}`,
    );
  const named = (files: readonly RecordFile<string>[]): string[][] =>
    files.flatMap(({ file, flock }) => (flock === undefined ? [[basename(file)]] : []));
  const asNamed = named([...sources.gathers, ...sources.cases]);
  if (asNamed.length > 0) parts.push(`Without a column Flock, so a flock named as the file is:\n${indented(asNamed)}`);
  if (unnamed.gathers + unnamed.cases > 0)
    parts.push(
      `Without the name of a flock: gathers ${unnamed.gathers}, case records ${unnamed.cases}. They are not counted, and every line says so, since they may be of any flock.`,
    );
  const unread = [...examples, ...sources.leftOut.slice(0, 5), ...sources.tags];
  if (unread.length > 0)
    parts.push(
      `Cannot be read, among others; the lines of their flocks say how many:\n${indented(unread.map((line) => [line]))}`,
    );
  return parts.join("\n\n");
}

const indented = (rows: readonly (readonly string[])[]): string =>
  textColumns(rows)
    .map((line) => `  ${line}`)
    .join("\n");
