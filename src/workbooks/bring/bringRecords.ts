import { type Cell, isBlankCell } from "../../cells/cell.ts";
import { type Day, isoText } from "../../cells/day.ts";
import { usualLimits } from "../../workbook/limits.ts";
import { lookInto } from "../../workbook/lookInto.ts";
import { WorkbookProblem } from "../../workbook/workbookProblem.ts";
import type { Packing } from "../../workbook/zip/packing.ts";
import type { BookContent } from "../footBook/bookContent.ts";
import { sheetNames } from "../footBook/bookSheets.ts";
import { bookVersion } from "../footBook/bookVersion.ts";
import { emptyBook } from "../footBook/emptyBook.ts";
import { cases } from "../tables/cases.ts";
import type { Table } from "../tables/defineTable.ts";
import { gathers } from "../tables/gathers.ts";
import { saleList } from "../tables/saleList.ts";
import { groups, medicines, people, treatments } from "../tables/settingsTables.ts";
import { asRecord, mostLetters } from "./asRecord.ts";
import { blocksInBook } from "./blocksInBook.ts";
import { blocksInText } from "./blocksInText.ts";
import type { DateOrder } from "./dateIn.ts";
import { type Matches, matchHeadings, plainHeading } from "./matchHeadings.ts";
import { NoRecords } from "./noRecords.ts";
import type { RecordBlock } from "./recordBlock.ts";
import { type BookSettings, carriedNames, settingsOf } from "./settingsOf.ts";
import { stillOpen } from "./stillOpen.ts";

/** A file that records are brought from. */
export interface Source {
  readonly file: string;
  readonly bytes: Uint8Array;
}

export interface BringOptions {
  readonly matches: Matches;
  /** What unpacks workbooks, where it is not to be the library. */
  readonly packing?: Packing;
  /** What 03/04/2026 means in text; such a text stays as it is when this is left out. */
  readonly order: DateOrder | undefined;
  /** The first day of a new year; all records are brought when left out. */
  readonly from: Day | undefined;
  readonly farm: string | undefined;
  readonly made: string;
}

/** Rows of one place that were not brought, and why. */
export interface LeftBehind {
  readonly place: string;
  readonly rows: readonly number[];
  readonly why: string;
}

export interface Brought {
  readonly content: BookContent;
  /** For each place: rows in, and rows out. */
  readonly places: readonly {
    readonly place: string;
    readonly into: "Cases" | "Gathers";
    readonly rowsIn: number;
    readonly rowsOut: number;
    /** What each heading was taken for: a heading of the book, "Note" or "left out". */
    readonly headings: readonly (readonly [heading: string, taken: string])[];
  }[];
  readonly leftBehind: readonly LeftBehind[];
  /** Cells that stand in the new book as they were typed and are not what belongs there. */
  readonly toMend: readonly { readonly place: string; readonly row: number; readonly what: string }[];
  /** What else there is to know: settings, sheets and lists. */
  readonly notes: readonly string[];
}

interface Item<K extends string> {
  readonly place: string;
  readonly file: number;
  readonly row: number;
  readonly record: Partial<Record<K, Cell>>;
}

/**
 * Brings records of other files into a new Flock foot book. Every row that holds anything is either in the book or named
 * with the reason.
 *
 * @throws WorkbookProblem when a file holds no records that are known, or was made by a later version
 */
export function bringRecords(sources: readonly Source[], options: BringOptions): Brought {
  const read = sources.map(({ file, bytes }) => readSource(file, bytes, options));
  const unused = [...options.matches.keys()].find(
    (heading) =>
      !read.some(({ blocks }) => blocks.some(({ headings }) => headings.map(plainHeading).includes(heading))),
  );
  if (unused !== undefined)
    throw new WorkbookProblem(
      `No records have the heading "${unused}" that --match names; they have ${[...new Set(read.flatMap(({ blocks }) => blocks.flatMap(({ headings }) => headings)))].filter((heading) => heading !== "").join(", ")}.`,
    );
  const notes = read.flatMap((source) => source.notes);
  const leftBehind: LeftBehind[] = [];
  const toMend: { place: string; row: number; what: string }[] = [];
  const places: {
    place: string;
    into: "Cases" | "Gathers";
    rowsIn: number;
    headings: (readonly [string, string])[];
  }[] = [];
  const found = {
    cases: [] as Item<keyof typeof cases.columns>[],
    gathers: [] as Item<keyof typeof gathers.columns>[],
  };

  read.forEach(({ blocks }, file) => {
    for (const block of blocks) {
      const matched = matchHeadings(block.headings, options.matches);
      if (!matched) continue;
      const table = matched.kind === "cases" ? cases : gathers;
      places.push({
        place: block.place,
        into: matched.kind === "cases" ? "Cases" : "Gathers",
        rowsIn: block.rows.length,
        headings: block.headings.flatMap((heading, index) =>
          heading === "" ? [] : [[heading, takenFor(table, matched.columns[index] ?? "")] as const],
        ),
      });
      const repeated: number[] = [];
      for (const { row, cells } of block.rows) {
        if (repeatsHeadings(cells, block)) {
          repeated.push(row);
          continue;
        }
        const { dayOffset } = block;
        const read =
          matched.kind === "cases"
            ? asRecord(cases, block.headings, matched.columns, cells, { dayOffset, order: options.order })
            : asRecord(gathers, block.headings, matched.columns, cells, { dayOffset, order: options.order });
        const why = refused(read.record);
        if (why !== undefined) {
          leftBehind.push({ place: block.place, rows: [row], why });
          continue;
        }
        for (const what of read.toMend) toMend.push({ place: block.place, row, what });
        (found[matched.kind] as Item<string>[]).push({ place: block.place, file, row, record: read.record });
      }
      leave(leftBehind, block.place, repeated, "the headings once more");
    }
  });

  const kept = {
    cases: withRoom(cases, fromDay(withoutTwins(found.cases, leftBehind), options.from, leftBehind), leftBehind),
    gathers: withRoom(
      gathers,
      gathersFrom(withoutTwins(found.gathers, leftBehind), options.from, leftBehind),
      leftBehind,
    ),
  };
  const mayMend = new Set([...kept.cases, ...kept.gathers].map(({ place, row }) => `${place}|${row}`));
  const content = contentFor(
    read.flatMap(({ settings }) => settings ?? []),
    kept,
    options,
    notes,
  );
  const rowsOut = (place: string, into: "Cases" | "Gathers"): number =>
    (into === "Cases" ? kept.cases : kept.gathers).filter((item) => item.place === place).length;
  return {
    content,
    places: places.map((place) => ({ ...place, rowsOut: rowsOut(place.place, place.into) })),
    leftBehind,
    toMend: toMend.filter(({ place, row }) => mayMend.has(`${place}|${row}`)),
    notes,
  };
}

interface Kept {
  readonly cases: readonly Item<keyof typeof cases.columns>[];
  readonly gathers: readonly Item<keyof typeof gathers.columns>[];
}

interface Read {
  readonly blocks: readonly RecordBlock[];
  readonly settings: BookSettings | undefined;
  readonly notes: readonly string[];
}

const ownSheets: ReadonlySet<string> = new Set([...Object.values(sheetNames), "Sale check"]);

function readSource(file: string, bytes: Uint8Array, { matches, packing }: BringOptions): Read {
  if (!isZip(bytes)) return { blocks: [blocksInText(bytes, file, matches)], settings: undefined, notes: [] };
  const workbook = lookInto(bytes, usualLimits, packing);
  const settings = settingsOf(workbook);
  const version = settings?.typed.get("book_version");
  if (typeof version === "number" && version > bookVersion)
    throw new WorkbookProblem(
      `${file} is a foot book of version ${version}, and this program knows them up to ${bookVersion}: get the newer program.`,
    );
  const records: readonly string[] = [sheetNames.gathers, sheetNames.cases];
  // The lists of a foot book are worked out from its records, and are no records.
  const { blocks, others } = blocksInBook(workbook, file, matches, ({ name, tables }) =>
    settings === undefined ? true : !ownSheets.has(name) || records.includes(name) || isRecords(tables),
  );
  if (blocks.length === 0)
    throw new NoRecords(
      file,
      others.flatMap(({ headings }) => headings),
    );
  return {
    blocks,
    settings,
    notes: others.map(({ sheet }) => `${file}, ${sheet}: no records were found there, so nothing was brought from it.`),
  };
}

const isZip = (bytes: Uint8Array): boolean => bytes[0] === 0x50 && bytes[1] === 0x4b;

const isRecords = (tables: readonly { readonly name: string }[]): boolean =>
  tables.some(({ name }) => name === gathers.name || name === cases.name);

function takenFor({ columns }: Pick<Table, "columns">, goes: string): string {
  if (goes === "to the note") return "Note";
  return columns[goes]?.heading ?? goes;
}

const repeatsHeadings = (cells: readonly Cell[], { headings }: RecordBlock): boolean =>
  headings.every(
    (heading, index) => plainHeading(heading) === (isBlankCell(cells[index]) ? "" : plainHeading(String(cells[index]))),
  );

/** Why a row is no record of anything. */
function refused(record: Partial<Record<string, Cell>>): string | undefined {
  const { note, ...others } = record;
  const texts = Object.values(record).filter((cell) => typeof cell === "string");
  if (texts.some((text) => text.length > mostLetters)) return `it has more than ${mostLetters} letters in a cell`;
  if (Object.keys(record).length === 0) return "everything in it stands in columns that are left out";
  if (Object.keys(others).length === 0) return `it says only "${shortened(String(note))}"`;
  return undefined;
}

const shortened = (text: string): string => (text.length > 60 ? `${text.slice(0, 59)}…` : text);

function leave(leftBehind: LeftBehind[], place: string, rows: readonly number[], why: string): void {
  if (rows.length > 0) leftBehind.push({ place, rows, why });
}

/** Tells of items that stay behind, by place. */
function leaveItems(leftBehind: LeftBehind[], items: readonly Item<string>[], why: string): void {
  for (const place of new Set(items.map((item) => item.place)))
    leave(
      leftBehind,
      place,
      items.filter((item) => item.place === place).map(({ row }) => row),
      why,
    );
}

/** Without records that another file brought already: a book and an export of it hold the same rows. */
function withoutTwins<K extends string>(items: readonly Item<K>[], leftBehind: LeftBehind[]): readonly Item<K>[] {
  const firstIn = new Map<string, number>();
  const twins: Item<K>[] = [];
  const kept = items.filter((item) => {
    const key = JSON.stringify(Object.entries(item.record).sort(([one], [other]) => (one < other ? -1 : 1)));
    const first = firstIn.get(key) ?? item.file;
    firstIn.set(key, first);
    if (first === item.file) return true;
    twins.push(item);
    return false;
  });
  leaveItems(leftBehind, twins, "another file has the very same row");
  return kept;
}

function fromDay(items: Kept["cases"], from: Day | undefined, leftBehind: LeftBehind[]): Kept["cases"] {
  if (from === undefined) return items;
  const open = stillOpen(
    items.map(({ record }) => record),
    from,
  );
  leaveItems(
    leftBehind,
    items.filter((_, index) => !open[index]),
    `before ${isoText(from)}, of animals with nothing open on that day`,
  );
  return items.filter((_, index) => open[index]);
}

function gathersFrom(items: Kept["gathers"], from: Day | undefined, leftBehind: LeftBehind[]): Kept["gathers"] {
  if (from === undefined) return items;
  const isOld = ({ record: { date } }: Kept["gathers"][number]): boolean => typeof date === "number" && date < from;
  leaveItems(leftBehind, items.filter(isOld), `gathers before ${isoText(from)}`);
  return items.filter((item) => !isOld(item));
}

function withRoom<K extends string>(
  { name, room }: Table<K>,
  items: readonly Item<K>[],
  leftBehind: LeftBehind[],
): readonly Item<K>[] {
  leaveItems(leftBehind, items.slice(room), `${name} has room for ${room} rows; begin a new year`);
  return items.slice(0, room);
}

function contentFor(
  books: readonly BookSettings[],
  kept: Kept,
  { farm, made }: BringOptions,
  notes: string[],
): BookContent {
  const [first] = books;
  const typed = first?.typed ?? new Map<string, Cell>();
  const number = (name: string): number | undefined => {
    const cell = typed.get(name);
    if (cell !== undefined && typeof cell !== "number")
      notes.push(`The setting ${name} holds "${String(cell)}", which is no number; it was not brought.`);
    return typeof cell === "number" ? cell : undefined;
  };
  for (const name of ["as_of", "year_from"])
    if (typed.has(name)) notes.push(`The setting ${name} was fixed; in the new book it follows the calendar again.`);
  const name = typed.get("farm_name");
  const listed = <K extends string>(table: Table<K>, key: K, of: (book: BookSettings) => readonly Row<K>[]) =>
    merged(table, key, books.map(of), notes);
  const owns = listed(groups, "group", (book) => book.groups);
  const whoTreats = listed(people, "givenBy", (book) => book.people);
  // A farm that brings its first records has typed the names of its groups in them.
  const seen = (cells: readonly (Cell | undefined)[], most: number): readonly string[] =>
    [...new Set(cells.filter((cell) => typeof cell === "string").map((cell) => cell.trim()))].slice(0, most);
  const used = [...kept.gathers, ...kept.cases].map(({ record }) => record.group);
  const saleTags = merged(
    saleList,
    "tag",
    books.map((book) => book.saleTags),
    notes,
  );
  const base = emptyBook({ farm: farm ?? (name === undefined ? undefined : String(name)), made });
  return {
    ...base,
    target: number("target") ?? base.target,
    lameFrom: number("lame_from"),
    breedingSheep: number("breeding_sheep"),
    slaughterLambs: number("slaughter_lambs"),
    settings: new Map(
      carriedNames.flatMap((known) => (/_days$|^repeat_from$/.test(known) ? [[known, number(known)] as const] : [])),
    ),
    groups: books.length > 0 ? owns : seen(used, groups.room).map((group) => ({ group })),
    medicines: listed(medicines, "medicine", (book) => book.medicines),
    givenBy:
      books.length > 0
        ? whoTreats.map(({ givenBy }) => String(givenBy ?? ""))
        : seen(
            kept.cases.map(({ record }) => record.givenBy),
            people.room,
          ),
    treatments: listed(treatments, "treatment", (book) => book.treatments).map(({ treatment }) =>
      String(treatment ?? ""),
    ),
    gathers: kept.gathers.map(({ record }) => record),
    cases: kept.cases.map(({ record }) => record),
    saleDate: number("sale_date"),
    saleTags: saleTags.map(({ tag }) => String(tag ?? "")),
    eventDate: number("event_date"),
  };
}

type Row<K extends string> = Readonly<Partial<Record<K, Cell | undefined>>>;

/** The lists of several books in one; where two say different things of one name, the first stands and it is told. */
function merged<K extends string>(
  { name, room }: Table<K>,
  key: K,
  lists: readonly (readonly Row<K>[])[],
  notes: string[],
): readonly Row<K>[] {
  const rows = new Map<string, Row<K>>();
  for (const row of lists.flat()) {
    const called = plainHeading(String(row[key] ?? ""));
    const before = rows.get(called);
    if (before === undefined) rows.set(called, row);
    else if (JSON.stringify(before) !== JSON.stringify(row) && called !== "")
      notes.push(`${name}: "${String(row[key])}" stands there with different numbers; the first were brought.`);
  }
  const all = [...rows.values()];
  for (const row of all.slice(room))
    notes.push(`${name}: there is room for ${room}, and "${String(row[key] ?? "")}" was not brought.`);
  return all.slice(0, room);
}
