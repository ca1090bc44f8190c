import type { DuckDBConnection } from "@duckdb/node-api";
import type { Cell } from "../../cells/cell.ts";
import { firstDay, lastDay } from "../../cells/day.ts";
import { numberIn } from "../../cells/numberIn.ts";
import { fieldReader } from "../../core/records/fieldChecks.ts";
import { nameKey } from "../../core/words/nameKey.ts";
import { BadInput } from "../badInput.ts";
import { runsOn } from "./duckTrouble.ts";
import type { WrittenTag } from "./flockTally.ts";
import { eachChunk, sqlName, sqlText } from "./openDuck.ts";
import type { CaseKey, FileColumn, GatherKey, RecordFile } from "./recordSources.ts";
import { caseFault, gatherFault, type RowCells } from "./rowFault.ts";

/** What the database holds once records are loaded, for `countFlocks`. */
export interface LoadedRecords {
  /** Names as first written, in the order of their numbers; number 0 is the first. */
  readonly flocks: readonly string[];
  /** A few rows that cannot be read, for the screen. */
  readonly examples: readonly string[];
  /** Rows that name no flock. */
  readonly unnamed: { readonly gathers: number; readonly cases: number };
  /** Whether some tags are more than a number. */
  readonly hasTexts: boolean;
  /** The files of cases, with what reads each. */
  readonly caseFiles: readonly CaseFile[];
}

interface CaseFile {
  readonly file: RecordFile<CaseKey>;
  readonly sql: string;
}

/** A tag that cannot be read, and the number of its flock. */
export interface UnreadTag {
  readonly flock: number;
  readonly tag: WrittenTag;
}

/** Where tags that cannot be read stand, and how to mend them. */
export async function unreadTagRows(
  duck: DuckDBConnection,
  { caseFiles }: LoadedRecords,
  tags: readonly UnreadTag[],
): Promise<readonly string[]> {
  if (tags.length === 0) return [];
  const which = tags.map(({ flock, tag }) => {
    const same = typeof tag === "number" ? `number = ${tag}` : `head || rest = ${sqlText(tag)}`;
    return `(flock = ${flock} AND ${same})`;
  });
  const found: string[] = [];
  await duck.run("SET preserve_insertion_order = true");
  for (const { file, sql } of caseFiles)
    for (const { number, cells } of await rowsWhere(duck, file, sql, which.join(" OR "), examplesShown - found.length))
      found.push(`${file.file}, row ${number}: ${caseFault(cells)}`);
  await duck.run("SET preserve_insertion_order = false");
  return found;
}

const examplesShown = 5;

// Farm 2 before Farm 10, and letters with accents among the others; the same on every machine.
const order = new Intl.Collator("en", { numeric: true });

/**
 * Makes of all files a table `gathers` and a view `records`, in which flocks are numbers and days are serials. Words are
 * read by the rules of the functions, each spelling once; where one cannot be read, NULL stands, and `ok` is false.
 */
export async function loadRecords(
  duck: DuckDBConnection,
  gathers: readonly RecordFile<GatherKey>[],
  cases: readonly RecordFile<CaseKey>[],
): Promise<LoadedRecords> {
  const flocks = await numberFlocks(duck, [...gathers, ...cases]);
  const words = new SpellingTables(duck);
  const groups = await nameGroups(duck, gathers);
  const [gatherRows, caseRows]: [string[], string[]] = [[], []];
  for (const file of gathers) gatherRows.push(await gatherSql(file, words, groups));
  for (const file of cases) caseRows.push(await caseSql(file, words));
  await duck.run(`CREATE OR REPLACE TABLE gathers AS ${gatherRows.join(" UNION ALL ") || noGathers}`);
  await duck.run(`CREATE OR REPLACE VIEW records AS ${caseRows.join(" UNION ALL ") || noCases}`);
  const [ofGathers, ofCases] = [
    await countsOf(duck, "gathers", ["flock IS NULL", "NOT ok", "running_on"]),
    await countsOf(duck, "records", ["flock IS NULL", `day IS NULL OR ${noTagSql}`, "running_on", "head IS NOT NULL"]),
  ];
  const gatherFiles = gathers.map((file, place) => ({ file, sql: gatherRows[place] ?? "" }));
  const caseFiles = cases.map((file, place) => ({ file, sql: caseRows[place] ?? "" }));
  const lacking = (): number => examplesShown - examples.length;
  await duck.run("SET preserve_insertion_order = true");
  if (ofGathers[2] || ofCases[2])
    for (const { file, sql } of [...gatherFiles, ...caseFiles]) {
      const [row] = await rowsWhere(duck, file, sql, "running_on", 1);
      if (row) throw new BadInput(`${file.file}: ${runsOn(row.number)}`);
    }
  const examples: string[] = [];
  if (ofGathers[0] || ofGathers[1])
    for (const { file, sql } of gatherFiles)
      for (const { number, cells } of await rowsWhere(duck, file, sql, "flock IS NULL OR NOT ok", lacking()))
        examples.push(`${file.file}, row ${number}: ${gatherFault(cells)}`);
  if (ofCases[0] || ofCases[1])
    for (const { file, sql } of caseFiles)
      for (const { number, cells } of await rowsWhere(
        duck,
        file,
        sql,
        `flock IS NULL OR day IS NULL OR ${noTagSql}`,
        lacking(),
      ))
        examples.push(`${file.file}, row ${number}: ${caseFault(cells)}`);
  await duck.run("SET preserve_insertion_order = false");
  const unnamed = { gathers: ofGathers[0] ?? 0, cases: ofCases[0] ?? 0 };
  return { flocks, examples, unnamed, hasTexts: (ofCases[3] ?? 0) > 0, caseFiles };
}

const noTagSql = "(head IS NULL AND (number IS NULL OR number = 0))";

/** How many rows there are of each kind; in one go, since each goes through every record. */
async function countsOf(duck: DuckDBConnection, table: string, kinds: readonly string[]): Promise<readonly number[]> {
  const counts = kinds.map((kind) => `count(*) FILTER (WHERE ${kind})`).join(", ");
  const [row = []] = await (await duck.run(`SELECT ${counts} FROM ${table}`)).getRows();
  return row.map(Number);
}

const noGathers =
  "SELECT 0 AS flock, NULL::VARCHAR AS grp, 0 AS day, 0 AS seen, 0 AS lame, true AS ok, false AS running_on, 0::BIGINT AS row WHERE false";
const noCases =
  "SELECT 0 AS flock, NULL::DOUBLE AS number, NULL::VARCHAR AS head, NULL::VARCHAR AS rest, 0 AS day, false AS of_book, false AS running_on, 0::BIGINT AS row WHERE false";

/** Texts that are the same name, by its key, each list in the order of the letters. */
function spellingsOf(texts: readonly string[]): ReadonlyMap<string, readonly string[]> {
  const spellings = new Map<string, string[]>();
  for (const text of texts.toSorted()) {
    const key = nameKey(text);
    if (key === "") continue;
    const known = spellings.get(key);
    if (known === undefined) spellings.set(key, [text]);
    else if (known.at(-1) !== text) known.push(text);
  }
  return spellings;
}

const shownName = (written: readonly string[], key: string): string => (written[0] ?? key).trim().replace(/\s+/g, " ");

async function numberFlocks(duck: DuckDBConnection, files: readonly RecordFile<string>[]): Promise<readonly string[]> {
  const columns = files.flatMap(({ from, flock }) => (flock ? [{ from, column: flock }] : []));
  const fileNames = files.flatMap(({ flock, file }) => (flock ? [] : [nameOfFile(file)]));
  const spellings = spellingsOf([...fileNames, ...(await distinct(duck, columns))]);
  const keys = [...spellings.keys()].sort(order.compare);
  await duck.run("CREATE OR REPLACE TABLE flock_names (text VARCHAR, flock INTEGER)");
  const appender = await duck.createAppender("flock_names");
  const names = keys.map((key, number) => {
    const written = spellings.get(key) ?? [];
    for (const text of written) {
      appender.appendVarchar(text);
      appender.appendInteger(number);
      appender.endRow();
    }
    return shownName(written, key);
  });
  appender.closeSync();
  return names;
}

/** How each group is called, by the key of its name: the same in all files. */
async function nameGroups(
  duck: DuckDBConnection,
  files: readonly RecordFile<GatherKey>[],
): Promise<ReadonlyMap<string, string>> {
  const columns = files.flatMap(({ from, columns: { group } }) => (group ? [{ from, column: group }] : []));
  const spellings = spellingsOf(await distinct(duck, columns));
  return new Map([...spellings].map(([key, written]) => [key, shownName(written, key)]));
}

const nameOfFile = (file: string): string => (file.split(/[\\/]/).at(-1) ?? file).replace(/\.[^.]*$/, "");

interface ColumnOfFile {
  readonly from: string;
  readonly column: FileColumn;
}

/** Every text that stands in any of the columns, once. */
async function distinct(duck: DuckDBConnection, columns: readonly ColumnOfFile[]): Promise<readonly string[]> {
  if (columns.length === 0) return [];
  const texts = columns.map(({ from, column }) => `SELECT ${sqlName(column.name)}::VARCHAR AS text FROM ${from}`);
  const found: string[] = [];
  const all = texts.join(" UNION ALL ");
  await eachChunk(duck, `SELECT DISTINCT text FROM (${all}) WHERE text IS NOT NULL`, ([chunk = []]) => {
    for (const text of chunk) found.push(String(text));
  });
  return found;
}

/** Tables that say what the spellings of a column mean. */
class SpellingTables {
  private readonly duck: DuckDBConnection;
  private made = 0;

  constructor(duck: DuckDBConnection) {
    this.duck = duck;
  }

  /** @returns the SQL for the column's value, and the join that it needs */
  async read(
    from: string,
    column: FileColumn,
    type: "INTEGER" | "VARCHAR",
    meaning: (text: string) => number | string | undefined,
  ): Promise<Read> {
    const table = `spellings_${this.made++}`;
    await this.duck.run(`CREATE OR REPLACE TABLE ${table} (text VARCHAR, value ${type})`);
    const appender = await this.duck.createAppender(table);
    for (const text of await distinct(this.duck, [{ from, column }])) {
      const value = meaning(text);
      if (value === undefined) continue;
      appender.appendVarchar(text);
      if (typeof value === "number") appender.appendInteger(value);
      else appender.appendVarchar(value);
      appender.endRow();
    }
    appender.closeSync();
    return { value: `${table}.value`, join: `LEFT JOIN ${table} ON ${table}.text = source.${sqlName(column.name)}` };
  }
}

interface Read {
  readonly value: string;
  readonly join: string;
}

const nothing: Read = { value: "NULL", join: "" };
const isText = ({ type }: FileColumn): boolean => type === "VARCHAR";
const isNumber = ({ type }: FileColumn): boolean => /^U?(TINY|SMALL|BIG|HUGE)?INT|^FLOAT|^DOUBLE|^DECIMAL/.test(type);
const isDate = ({ type }: FileColumn): boolean => type === "DATE" || type.startsWith("TIMESTAMP");

async function dayOf(words: SpellingTables, from: string, column: FileColumn | undefined): Promise<Read> {
  if (column === undefined) return nothing;
  const name = `source.${sqlName(column.name)}`;
  if (isText(column)) {
    const read = fieldReader("treated", { asOf: undefined, dayOffset: 0 });
    return words.read(from, column, "INTEGER", (text) => wholeDay(read(text).value));
  }
  const serial = isDate(column)
    ? `(${name}::DATE - DATE '1899-12-30')`
    : `CASE WHEN isfinite(${name}::DOUBLE) THEN floor(${name}::DOUBLE) END`;
  return {
    value: `CASE WHEN ${serial} BETWEEN ${firstDay} AND ${lastDay} THEN (${serial})::INTEGER END`,
    join: "",
  };
}

const wholeDay = (value: Cell | undefined): number | undefined =>
  typeof value === "number" ? Math.floor(value) : undefined;

const mostSheep = 1_000_000_000;

async function countOf(words: SpellingTables, from: string, column: FileColumn | undefined): Promise<Read> {
  if (column === undefined) return nothing;
  const isCount = (value: number): boolean => Number.isInteger(value) && value >= 0 && value <= mostSheep;
  if (isText(column))
    return words.read(from, column, "INTEGER", (text) => {
      const value = numberIn(text);
      return value !== undefined && isCount(value) ? value : undefined;
    });
  const number = `source.${sqlName(column.name)}::DOUBLE`;
  const whole = `${number} BETWEEN 0 AND ${mostSheep} AND ${number} = floor(${number})`;
  return { value: `CASE WHEN ${whole} THEN (${number})::INTEGER END`, join: "" };
}

const groupOf = async (
  words: SpellingTables,
  from: string,
  column: FileColumn | undefined,
  groups: ReadonlyMap<string, string>,
): Promise<Read> => (column ? words.read(from, column, "VARCHAR", (text) => groups.get(nameKey(text))) : nothing);

function flockOf({ flock, file }: RecordFile<string>): Read {
  if (flock === undefined)
    return { value: `(SELECT flock FROM flock_names WHERE text = ${sqlText(nameOfFile(file))})`, join: "" };
  return {
    value: "flock_names.flock",
    join: `LEFT JOIN flock_names ON flock_names.text = source.${sqlName(flock.name)}::VARCHAR`,
  };
}

const isBlank = (column: FileColumn | undefined): string => {
  if (column === undefined) return "true";
  const name = `source.${sqlName(column.name)}`;
  if (!isText(column)) return `${name} IS NULL`;
  return `(${name} IS NULL OR NOT (${name} > ' ' AND ${name} < '${lastPlain}') AND ltrim(${name}, '${white}') = '')`;
};

// What the functions take for white space. Of most texts the first sign, a letter or a digit, shows that there is more.
const white = Array.from({ length: 0x10000 }, (_, code) => String.fromCharCode(code))
  .filter((sign) => sign.trim() === "")
  .join("");
const lastPlain = "\u007f";

async function gatherSql(
  file: RecordFile<GatherKey>,
  words: SpellingTables,
  groups: ReadonlyMap<string, string>,
): Promise<string> {
  const { from, columns, given } = file;
  const [flock, day] = [flockOf(file), await dayOf(words, from, columns.date)];
  const [seen, lame] = [await countOf(words, from, columns.lookedAt), await countOf(words, from, columns.lame)];
  const group = await groupOf(words, from, columns.group, groups);
  const joins = [flock, day, seen, lame, group].map(({ join }) => join).join(" ");
  const blank = [columns.date, columns.lookedAt, columns.lame, ...(given ? [given] : [])].map(isBlank).join(" AND ");
  return `SELECT ${flock.value} AS flock, ${group.value} AS grp, ${day.value} AS day, ${seen.value} AS seen, ${lame.value} AS lame,
    coalesce(${day.value} IS NOT NULL AND ${lame.value} <= ${seen.value}, false) AS ok, ${runningOn(file)} AS running_on, NULL::BIGINT AS row
    FROM ${from} AS source ${joins} WHERE NOT (${blank}) OR running_on`;
}

async function caseSql(file: RecordFile<CaseKey>, words: SpellingTables): Promise<string> {
  const { from, columns, given } = file;
  const flock = flockOf(file);
  const [seen, treated] = [await dayOf(words, from, columns.seen), await dayOf(words, from, columns.treated)];
  const joins = [flock, seen, treated].map(({ join }) => join).join(" ");
  const noTag = isBlank(columns.tag);
  const { number, text } = tagOf(columns.tag, noTag);
  // A whole group was treated at once: no case of one animal.
  const wholeGroup = `${noTag} AND NOT ${isBlank(columns.group)}`;
  const blank = [columns.tag, columns.seen, columns.treated, ...(given ? [given] : [])].map(isBlank).join(" AND ");
  return `SELECT ${flock.value} AS flock, ${number} AS number, substr(${text}, 1, ${inRow}) AS head, substr(${text}, ${inRow + 1}) AS rest,
    CASE WHEN ${isBlank(columns.seen)} THEN ${treated.value} ELSE ${seen.value} END AS day, ${given !== undefined} AS of_book, ${runningOn(file)} AS running_on, NULL::BIGINT AS row
    FROM ${from} AS source ${joins} WHERE (NOT (${blank}) AND NOT (${wholeGroup})) OR running_on`;
}

// The database keeps a text of so many bytes in the row itself. A longer one is fetched by a call of its own, which took
// more time than all else that is done with a record; so a tag comes in two pieces.
const inRow = 12;

/**
 * A tag as a number, or else as a text. A text of 15 digits that begins with none of the zeros that a number drops comes
 * as a number too: the functions take both for the same animal.
 */
function tagOf(column: FileColumn | undefined, blank: string): { readonly number: string; readonly text: string } {
  if (column === undefined) return { number: "NULL::DOUBLE", text: "NULL::VARCHAR" };
  const tag = `source.${sqlName(column.name)}`;
  if (isNumber(column)) return { number: `${tag}::DOUBLE`, text: "NULL::VARCHAR" };
  const isElectronic = `regexp_full_match(${tag}::VARCHAR, '[1-9][0-9]{14}')`;
  return {
    number: `CASE WHEN ${isElectronic} THEN ${tag}::VARCHAR::DOUBLE END`,
    text: `CASE WHEN NOT ${blank} AND NOT ${isElectronic} THEN ${tag}::VARCHAR END`,
  };
}

// In Parquet no cell can run into the next.
function runningOn({ from, flock, columns }: RecordFile<string>): string {
  if (!from.startsWith("read_csv")) return "false";
  const read = [flock, ...Object.values(columns)].filter((column) => column !== undefined);
  return read.map(({ name }) => `coalesce(contains(source.${sqlName(name)}, chr(10)), false)`).join(" OR ");
}

interface FoundRow<K extends string> {
  /** As a spreadsheet counts the rows of a csv file; in Parquet the first record is 1. */
  readonly number: number;
  readonly cells: RowCells<K>;
}

/** The first rows of a file of which something holds. */
async function rowsWhere<K extends string>(
  duck: DuckDBConnection,
  file: RecordFile<K>,
  rows: string,
  which: string,
  most: number,
): Promise<readonly FoundRow<K>[]> {
  const { from, flock } = file;
  if (most <= 0 || !from.startsWith("read_")) return [];
  const numbered = rows
    .replace("NULL::BIGINT AS row", "source.number AS row")
    .replace(`FROM ${from} AS source`, `FROM (SELECT *, row_number() OVER () AS number FROM ${from}) AS source`);
  const columns = { ...(flock && { flock }), ...file.columns } as Readonly<Record<K | "flock", FileColumn>>;
  const keys = Object.keys(columns) as (K | "flock")[];
  const shown = keys.map((key) => `source.${sqlName(columns[key].name)}::VARCHAR`).join(", ");
  const found = await duck.run(
    `SELECT row, cells FROM (${numbered.replace("SELECT ", `SELECT [${shown}] AS cells, `)}) WHERE ${which} ORDER BY row LIMIT ${most}`,
  );
  const headingRows = from.startsWith("read_csv") ? 1 : 0;
  return (await found.getRows()).map(([row, cells]) => {
    const { items } = cells as { readonly items: readonly (string | null)[] };
    const byKey = keys.map((key, index) => [key, items[index] ?? null] as const);
    return { number: Number(row) + headingRows, cells: Object.fromEntries(byKey) as RowCells<K> };
  });
}
