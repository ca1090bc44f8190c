import { basename } from "node:path";
import { Problem } from "../../cells/problem.ts";
import { BadInput } from "../badInput.ts";
import type { Command, Terminal } from "../command.ts";
import type { LeftBook } from "../compare/bookTables.ts";
import type { By, Compared } from "../compare/countFlocks.ts";
import type { LoadedRecords } from "../compare/loadRecords.ts";
import type { RecordFile, RecordSources } from "../compare/recordSources.ts";
import { endsIn, freePlace } from "../newFile.ts";
import { progressBar } from "../progressBar.ts";
import { readOptions } from "../readOptions.ts";
import { textColumns } from "../textColumns.ts";
import { today } from "../today.ts";

const anyNumber = 1_000_000;

/** Compares any number of flocks, whose records are counted by a database. */
export const compareCommand: Command = {
  name: "compare",
  takes: "RECORDS… --out FILE [--by flock] [--year 2026] [--gap-days 14] [--letters]",
  summary: "compare thousands of flocks from foot books, csv and Parquet files, one line a flock",
  details: `RECORDS…       foot books (.xlsx), .csv and .parquet files, or folders of them. Headings of gathers:
               Flock, Date, Group, Looked at, Lame; of cases: Flock, Tag, Seen lame, Treated. A file
               without Flock is all of one flock, named as the file is
--out FILE     .xlsx, .csv or .parquet; a file that is there already is never replaced
--by flock     one line a flock; month or group: one a month or group of each flock
--year 2026    the year to compare; without it, the latest in which most flocks have gathers
--gap-days 14  most days between two records of one case
--letters      call the flocks A, B, C in the file; the key is printed and stands nowhere else

Of two foot books of one flock the one is counted that collate keeps: of those with gathers in the year,
the one written in last. The other is named.

Ranges, words of the funnel, steadied shares with ranks, cases and signals are those that FOOT.PREVRANGE,
FUNNEL, SHRUNKPREV, CASETABLE and LAMEWATCH give. A blank is not known, and never none. What cannot
be read is left out, and said in the line of every flock that it may concern.

It counts with the database DuckDB (npm install @duckdb/node-api), which holds no more than 512 MB
in memory and sets the rest aside in the folder for temporary files.`,
  async run(given, terminal) {
    const text = { type: "string" } as const;
    const options = { out: text, by: text, year: text, "gap-days": text, letters: { type: "boolean" } as const };
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
    await freePlace(out);
    try {
      await compare(positionals, out, { by, year, gapDays, letters }, terminal);
    } catch (error) {
      if (error instanceof Problem) throw new BadInput(`The flocks cannot be compared: ${error.message}.`);
      throw error;
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

interface Wanted {
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
    const { loadRecords } = await import("../compare/loadRecords.ts");
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
      throw new BadInput("There is no gather with a day and counts in the records; without one no year is known.");
    const left = await books.leaveTwins(year);
    if (left.length > 0) loaded = await loadRecords(duck, all.gathers, all.cases);
    const counted = await countFlocks(duck, loaded, { ...wanted, year }, terminal.progress);
    if (counted.lines.length === 0) throw new BadInput(`There is nothing of ${year} in the records.`);
    const { letterFlocks } = await import("../compare/letterFlocks.ts");
    const { compared, key } = wanted.letters ? letterFlocks(counted) : { compared: counted, key: [] };
    terminal.progress("Writing …");
    await writeCompared(duck, compared, wanted.by, out, today());
    terminal.progressDone();
    terminal.say(report(compared, loaded, { ...sources, ...all, left }, out));
    if (key.length > 0) terminal.say(`\nThe key, which is not in the file:\n${indented(key)}`);
  });
}

const grouped = (count: number): string => count.toLocaleString("en-GB");

const unusedLines = ({ unused }: RecordSources): string => indented(unused.map(({ file, reason }) => [file, reason]));

interface Sources extends RecordSources {
  readonly left: readonly LeftBook[];
}

function report(compared: Compared, loaded: LoadedRecords, sources: Sources, out: string): string {
  const { flocks, examples, unnamed } = loaded;
  const counts = `${grouped(flocks.length)} flocks: ${grouped(compared.gathers)} days of gathers; ${grouped(compared.caseRecords)} case records, which are ${grouped(compared.cases)} cases`;
  const parts = [`${counts}.\n${grouped(compared.lines.length)} lines for ${compared.year}: ${out}`];
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
  const unread = [...examples, ...compared.unreadTags];
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
