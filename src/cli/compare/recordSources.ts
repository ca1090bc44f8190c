import { readdir, stat } from "node:fs/promises";
import { basename, extname, join } from "node:path";
import type { DuckDBConnection } from "@duckdb/node-api";
import { WorkbookProblem } from "../../workbook/workbookProblem.ts";
import { type BookRecords, readBookRecords } from "../../workbooks/collate/readBookRecords.ts";
import { cases } from "../../workbooks/tables/cases.ts";
import { gathers } from "../../workbooks/tables/gathers.ts";
import { BadInput } from "../badInput.ts";
import { withPlainFileErrors } from "../fileTrouble.ts";
import { isFolder } from "../newFile.ts";
import { nodePacking } from "../nodePacking.ts";
import { readOrdinary } from "../readOrdinary.ts";
import { duckTrouble } from "./duckTrouble.ts";
import { sqlText } from "./openDuck.ts";

/** A column of a file of records, with the type in which it is kept. */
export interface FileColumn {
  readonly name: string;
  readonly type: string;
}

/** A csv or Parquet file whose headings are those of gathers, or of cases. */
export interface RecordFile<K extends string> {
  readonly file: string;
  /** What SQL reads it by. */
  readonly from: string;
  readonly columns: Readonly<Partial<Record<K, FileColumn>>>;
  /** Undefined where the file has no column for it: then it is all of one flock, named as the file is. */
  readonly flock: FileColumn | undefined;
  /** True in every row that is known to hold a record, though nothing in it can be read. */
  readonly given?: FileColumn;
}

export type GatherKey = "date" | "group" | "lookedAt" | "lame";
export type CaseKey = "seen" | "treated" | "tag" | "group";

export interface RecordSources {
  readonly gathers: readonly RecordFile<GatherKey>[];
  readonly cases: readonly RecordFile<CaseKey>[];
  /** A file that cannot be used, and why. */
  readonly unused: readonly { readonly file: string; readonly reason: string }[];
}

const gatherKeys = ["date", "group", "lookedAt", "lame"] as const satisfies readonly GatherKey[];
const caseKeys = ["seen", "treated", "tag", "group"] as const satisfies readonly CaseKey[];

/** Headings are compared without capitals, spaces and the signs that stand for spaces in names of columns. */
const plainHeading = (heading: string): string =>
  heading
    .trim()
    .replace(/[\s_.-]+/g, " ")
    .toLowerCase();

/**
 * Looks at every file: books are read at once, one after the other; of the others only the headings.
 *
 * @param onBook - is given the records of each foot book
 */
export async function recordSources(
  duck: DuckDBConnection,
  paths: readonly string[],
  onBook: (book: BookRecords, file: string) => void,
  progress: (done: number, all: number, file: string) => void,
): Promise<RecordSources> {
  const files = await filesOf(paths);
  const found = { gathers: [] as RecordFile<GatherKey>[], cases: [] as RecordFile<CaseKey>[] };
  const unused: { file: string; reason: string }[] = [];
  for (const [done, file] of files.entries()) {
    progress(done, files.length, basename(file));
    const kind = extname(file).toLowerCase();
    try {
      if (await isFolder(file))
        throw new BadInput("It is a folder in a folder, and the files in it were not read; name it too to read them.");
      if (kind === ".xlsx" || kind === ".xlsm")
        onBook(readBookRecords(await readOrdinary(file, "It cannot be read"), nodePacking), file);
      else if (kind === ".csv" || kind === ".parquet") {
        await refuseEmpty(file);
        const from = kind === ".csv" ? csvOf(file) : `read_parquet(${sqlText(file)})`;
        const { of, ...record } = asRecords(file, from, await columnsOf(duck, from));
        if (of === "gathers") found.gathers.push(record);
        else found.cases.push(record);
      } else unused.push({ file, reason: "It is no .xlsx, .csv or .parquet file; save it as one of these." });
    } catch (error) {
      // One file must not stop the others, whatever is in it.
      const known = error instanceof WorkbookProblem || error instanceof BadInput;
      const [words = ""] = (error as Error).message.split("\n");
      unused.push({ file, reason: known ? words : (duckTrouble(error) ?? `It cannot be read (${words}).`) });
    }
  }
  return { ...found, unused };
}

// Every cell as it is written: a date is read by the rules of the functions, not guessed at by the database.
const csvOf = (file: string): string =>
  `read_csv(${sqlText(file)}, all_varchar = true, header = true, strict_mode = false, null_padding = true)`;

async function filesOf(paths: readonly string[]): Promise<readonly string[]> {
  const files: string[] = [];
  for (const path of paths) {
    if (!(await isFolder(path))) files.push(path);
    else {
      const names = await withPlainFileErrors(`${path} cannot be read`, () => readdir(path));
      // Spreadsheets leave hidden files and ~$ files beside a workbook that is open.
      const wanted = names.filter((name) => !name.startsWith(".") && !name.startsWith("~$"));
      files.push(...wanted.sort().map((name) => join(path, name)));
    }
  }
  return files;
}

async function columnsOf(duck: DuckDBConnection, from: string): Promise<readonly FileColumn[]> {
  const rows = await (await duck.run(`DESCRIBE SELECT * FROM ${from}`)).getRows();
  return rows.map(([name, type]) => ({ name: String(name), type: String(type) }));
}

type AsRecords =
  | (RecordFile<GatherKey> & { readonly of: "gathers" })
  | (RecordFile<CaseKey> & { readonly of: "cases" });

function asRecords(file: string, from: string, columns: readonly FileColumn[]): AsRecords {
  const byHeading = new Map(columns.map((column) => [plainHeading(column.name), column]));
  const under = (heading: string): FileColumn | undefined => byHeading.get(plainHeading(heading));
  const flock = under("Flock");
  const asGathers = pick(gatherKeys, (key) => under(gathers.columns[key].heading));
  const asCases = pick(caseKeys, (key) => under(cases.columns[key].heading));
  if (asGathers.date && asGathers.lookedAt && asGathers.lame)
    return { of: "gathers", file, from, flock, columns: asGathers };
  if (asCases.tag && (asCases.seen || asCases.treated)) return { of: "cases", file, from, flock, columns: asCases };
  throw new BadInput(otherHeadings(columns, asGathers, asCases));
}

/** Says what is there, and what the nearer of the two kinds of records lacks. */
function otherHeadings(
  columns: readonly FileColumn[],
  asGathers: Readonly<Partial<Record<GatherKey, FileColumn>>>,
  asCases: Readonly<Partial<Record<CaseKey, FileColumn>>>,
): string {
  const there = columns
    .slice(0, mostNamed)
    .map(({ name }) => `"${name.slice(0, 40)}"`)
    .join(", ");
  const more = columns.length > mostNamed ? " and others" : "";
  const forGathers = (["date", "lookedAt", "lame"] as const).flatMap((key) =>
    asGathers[key] ? [] : [gathers.columns[key].heading],
  );
  const forCases = [
    ...(asCases.tag ? [] : [cases.columns.tag.heading]),
    ...(asCases.seen || asCases.treated ? [] : [`${cases.columns.seen.heading} or ${cases.columns.treated.heading}`]),
  ];
  const lack =
    forGathers.length < 3 && (forCases.length === 2 || forGathers.length < forCases.length)
      ? `for gathers ${forGathers.join(" and ")} ${forGathers.length === 1 ? "is" : "are"} missing`
      : forCases.length < 2
        ? `for cases ${forCases.join(" and ")} is missing`
        : "gathers need Date, Looked at and Lame; cases need Tag and Seen lame or Treated";
  return `Its first row holds the headings ${there}${more}: ${lack}. Name the columns so in its first row; Flock and Group go with both.`;
}

const mostNamed = 8;

async function refuseEmpty(file: string): Promise<void> {
  const found = await withPlainFileErrors("It cannot be read", () => stat(file));
  if (!found.isFile()) throw new BadInput("It is no ordinary file.");
  if (found.size === 0) throw new BadInput("It is empty.");
}

function pick<K extends string>(
  keys: readonly K[],
  columnOf: (key: K) => FileColumn | undefined,
): Readonly<Partial<Record<K, FileColumn>>> {
  const picked: Partial<Record<K, FileColumn>> = {};
  for (const key of keys) {
    const column = columnOf(key);
    if (column) picked[key] = column;
  }
  return picked;
}
