import { readFile, stat } from "node:fs/promises";
import { basename } from "node:path";
import { momentFromText } from "../../cells/day.ts";
import { WorkbookProblem } from "../../workbook/workbookProblem.ts";
import type { Brought, Source } from "../../workbooks/bring/bringRecords.ts";
import { broughtInWords } from "../../workbooks/bring/broughtInWords.ts";
import { type DateOrder, dateOrders } from "../../workbooks/bring/dateIn.ts";
import type { Matches } from "../../workbooks/bring/matchHeadings.ts";
import { plainHeading } from "../../workbooks/bring/matchHeadings.ts";
import { NoRecords } from "../../workbooks/bring/noRecords.ts";
import { cases } from "../../workbooks/tables/cases.ts";
import { gathers } from "../../workbooks/tables/gathers.ts";
import { BadInput } from "../badInput.ts";
import type { Command } from "../command.ts";
import { withPlainFileErrors } from "../fileTrouble.ts";
import { newFile } from "../newFile.ts";
import { nodePacking } from "../nodePacking.ts";
import { plainName } from "../plainName.ts";
import { readOptions } from "../readOptions.ts";
import { textColumns } from "../textColumns.ts";
import { today } from "../today.ts";
import { writeWhole } from "../writeWhole.ts";

const mostFiles = 1000;

/** Brings records into a new Flock foot book. */
export const bringCommand: Command = {
  name: "bring",
  takes: "RECORDS… --into BOOK.xlsx [--from 2026-11-01] [--match HEADING=TAG] [--dates dmy] [--farm NAME]",
  summary: "bring records of an older foot book, of sheets of your own or of .csv files into a new foot book",
  details: `RECORDS…              .xlsx workbooks and .csv files; none of them is changed
--into BOOK.xlsx      the new Flock foot book; a file that is there already is never replaced
--from 2026-11-01     begin a new year on that day: of what was before, only the records of animals
                      that are still in withdrawal, lame or due are brought
--match "Ohr=Tag"     what a heading of your own stands for: a heading of the sheet Cases or Gathers,
                      or - to leave the column out; may be given again and again
--dates dmy|mdy|ymd   what dates such as 03/04/2026 mean that are kept as text; without it they stay
                      text, and the sheet Problems asks for each
--farm NAME           the name of the farm, where no older book says it

Headings are known as RECORDCHECK knows them. What has no column of its own goes to the note of its
record. Settings and medicines come from the first older foot book. Each row is in the new book or
is named here with the reason.`,
  async run(given, terminal) {
    const options = {
      into: { type: "string" },
      from: { type: "string" },
      match: { type: "string", multiple: true },
      dates: { type: "string" },
      farm: { type: "string" },
    } as const;
    const { values, positionals } = readOptions("bring", given, options, mostFiles);
    if (positionals.length === 0 || values.into === undefined)
      throw new BadInput("bring needs records and a book to write: soundfold bring RECORDS… --into BOOK.xlsx");
    const wanted = {
      matches: matchesIn(values.match ?? []),
      order: orderIn(values.dates),
      from: dayIn(values.from),
      farm: values.farm === undefined ? undefined : plainName("--farm", values.farm.trim()),
      made: today(),
      packing: nodePacking,
    };
    await newFile(values.into);
    terminal.progress("Reading the records");
    const sources: Source[] = [];
    for (const path of positionals) sources.push({ file: basename(path), bytes: await bytesOf(path) });
    // Loaded when they are asked for: other commands start faster without them.
    const { bringRecords } = await import("../../workbooks/bring/bringRecords.ts");
    const brought = withMatchNamed(() => bringRecords(sources, wanted));
    const { flockFootBook } = await import("../../workbooks/footBook/flockFootBook.ts");
    const { workedOut } = await import("../../workbooks/workedOut.ts");
    terminal.progress("Writing the book");
    const { bytes } = await workedOut(flockFootBook(brought.content), nodePacking);
    terminal.progressDone();
    await writeWhole(values.into, bytes);
    terminal.say(report(brought, values.into));
  },
};

async function bytesOf(path: string): Promise<Uint8Array> {
  const trouble = `${path} cannot be read`;
  const found = await withPlainFileErrors(trouble, () => stat(path));
  if (!found.isFile()) throw new BadInput(`${path} is no file; bring reads .xlsx workbooks and .csv files.`);
  if (!/\.(?:xls[xm]|csv|tsv|txt)$/i.test(path))
    throw new BadInput(`${path} is neither an .xlsx workbook nor a .csv file; save it as one of them first.`);
  return withPlainFileErrors(trouble, () => readFile(path));
}

function matchesIn(given: readonly string[]): Matches {
  const headings = [...new Set([...cases.headings, ...gathers.headings])];
  const known = new Set(headings.map(plainHeading));
  return new Map(
    given.map((text) => {
      const mark = text.lastIndexOf("=");
      const [theirs, ours] = [text.slice(0, Math.max(mark, 0)), text.slice(mark + 1).trim()];
      if (mark < 1) throw new BadInput(`--match "${text}" has no =; write it as --match "Their heading=Tag".`);
      if (ours !== "-" && !known.has(plainHeading(ours)))
        throw new BadInput(`--match "${text}": the book has no heading "${ours}"; it has ${headings.join(", ")}.`);
      return [plainHeading(theirs), ours] as const;
    }),
  );
}

function orderIn(text: string | undefined): DateOrder | undefined {
  const order = dateOrders.find((known) => known === text);
  if (text !== undefined && order === undefined)
    throw new BadInput(`--dates "${text}" is none of ${dateOrders.join(", ")}: the order of day, month and year.`);
  return order;
}

function dayIn(text: string | undefined): number | undefined {
  if (text === undefined) return undefined;
  const day = momentFromText(text);
  if (day === undefined || !Number.isInteger(day))
    throw new BadInput(`--from "${text}" is no day; write it as 2026-11-01.`);
  return day;
}

/** Whoever is told that no heading is known is told how to explain one. */
function withMatchNamed<T>(bring: () => T): T {
  try {
    return bring();
  } catch (error) {
    if (error instanceof NoRecords)
      throw new WorkbookProblem(`${error.message} Say what a heading means with --match "Their heading=Tag".`);
    throw error;
  }
}

function report(brought: Brought, output: string): string {
  const { total, places, headings, lists } = broughtInWords(brought);
  const told = [...(headings.length > 0 ? [{ title: "Headings", lines: headings }] : []), ...lists];
  return [
    `${total} The new book: ${output}`,
    indented(places),
    ...told.map(({ title, lines }) => `${title}:\n${indented(lines)}`),
  ].join("\n\n");
}

const indented = (rows: readonly (readonly string[])[]): string =>
  textColumns(rows.map((row) => row.map(withoutSigns)))
    .map((line) => `  ${line}`)
    .join("\n");

/** What stands in a file must not steer the terminal. */
const withoutSigns = (text: string): string => text.replace(/\p{Cc}/gu, " ");
