import { spawnSync } from "node:child_process";
import { mkdtempSync, rmSync, symlinkSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join, resolve } from "node:path";
import { strToU8, zipSync } from "fflate";
import { bundleCommand } from "../../src/build/release/bundleCommand.ts";
import { nodePacking } from "../../src/cli/nodePacking.ts";
import { engineInNode } from "../../src/hosts/headless/engineInNode.ts";
import { placeText } from "../../src/workbook/address.ts";
import { usualLimits } from "../../src/workbook/limits.ts";
import { openWorkbook } from "../../src/workbook/openWorkbook.ts";
import { recalculate } from "../../src/workbook/recalculate.ts";
import type { BenchReport, Limit } from "./report.ts";

const rows = 10_000;
const rounds = 9;
const listRows = 100_000;
const lists = 50;

/** What a workbook may take: seconds of processor time, and megabytes at the peak. */
interface Bounds {
  readonly seconds: number;
  readonly megabytes?: number;
}

const footBooks: readonly (readonly [cases: number, bounds: Bounds])[] = [
  [300, { seconds: 3, megabytes: 250 }],
  [3000, { seconds: 8, megabytes: 295 }],
  [30_000, { seconds: 40 }],
];

/**
 * `soundfold recalc` as it is shipped, each workbook in a process of its own: foot books that have not been worked out
 * yet, many lists over many records, and a call in each of 10,000 rows, beside the same rows with a call of a built-in
 * function that gives the same, and with constants.
 */
export async function bench(): Promise<BenchReport> {
  const folder = mkdtempSync(join(tmpdir(), "soundfold-bench-"));
  // What the command does not bring along stands beside it, as where it is installed.
  symlinkSync(resolve("node_modules"), join(folder, "node_modules"));
  try {
    writeFileSync(join(folder, "package.json"), '{ "type": "module" }');
    for (const [name, { text }] of Object.entries(await bundleCommand())) writeFileSync(join(folder, name), text);
    const report: { rows: Record<string, string>[]; limits: Limit[] } = { rows: [], limits: [] };
    const add = (workbook: string, file: string, bounds?: Bounds): void => {
      const { seconds, megabytes } = recalc(folder, file);
      report.rows.push({
        workbook,
        "processor time": inSeconds(seconds),
        "peak memory": `${Math.round(megabytes)} MB`,
      });
      if (!bounds) return;
      report.limits.push({ what: `seconds, ${workbook}`, measured: seconds, most: bounds.seconds });
      if (bounds.megabytes)
        report.limits.push({ what: `megabytes, ${workbook}`, measured: megabytes, most: bounds.megabytes });
    };
    for (const [cases, bounds] of footBooks)
      add(`foot book of ${cases.toLocaleString("en")} cases`, footBook(folder, cases), bounds);
    const put = (name: string, bytes: Uint8Array): string => {
      writeFileSync(join(folder, name), bytes);
      return join(folder, name);
    };
    const long = `${lists} lists over ${listRows.toLocaleString("en")} records`;
    add(long, put("lists.xlsx", manyLists()), { seconds: 20, megabytes: 1000 });
    const books = rowBooks();
    for (const { name, bytes } of Object.values(books))
      add(`${rows.toLocaleString("en")} rows, 50 COUNTIFS, ${name}`, put("rows.xlsx", bytes));
    const { asBuiltIn, aCall, note } = await inWarmProcess(books);
    return {
      title: "Recalculating a workbook",
      ...report,
      limits: [
        ...report.limits,
        { what: "a FOOT call a row, a built-in call = 1", measured: asBuiltIn, most: 1.2 },
        { what: "microseconds a FOOT call", measured: aCall, most: 50 },
      ],
      notes: [
        "The command as it is shipped, each workbook in a process of its own, from starting to the saved file; one run each. The foot books are invented by tests/bench/scale/makeFullBook.ts and none of their formulas has been worked out; one of more cases than the book we hand out has room for has a longer room.",
        note,
      ],
    };
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

function footBook(folder: string, cases: number): string {
  const file = join(folder, `cases-${cases}.xlsx`);
  const { status, stderr } = spawnSync("npx", ["tsx", "tests/bench/scale/makeFullBook.ts", file, String(cases)], {
    encoding: "utf8",
  });
  if (status !== 0) throw new Error(`a foot book of ${cases} cases cannot be made: ${stderr}`);
  return file;
}

const mark = "measured:";
const measuring = `process.on("exit", () => {
  const { maxRSS, userCPUTime, systemCPUTime } = process.resourceUsage();
  process.stderr.write("\\n${mark}" + JSON.stringify([(userCPUTime + systemCPUTime) / 1e6, maxRSS / 1e3]));
});`;

// In a process of its own, since the peak memory of a process never goes down again.
function recalc(folder: string, file: string): { readonly seconds: number; readonly megabytes: number } {
  const imported = `data:text/javascript,${encodeURIComponent(measuring)}`;
  const given = [join(folder, "soundfold.js"), "recalc", file, join(folder, "out.xlsx"), "--force"];
  const { stderr, status } = spawnSync(process.execPath, ["--import", imported, ...given], { encoding: "utf8" });
  if (status !== 0) throw new Error(`recalc ended with ${status}: ${stderr}`);
  const [seconds, megabytes] = JSON.parse(stderr.slice(stderr.lastIndexOf(mark) + mark.length)) as [number, number];
  return { seconds, megabytes };
}

interface RowBook {
  readonly name: string;
  readonly bytes: Uint8Array;
}

/** The same rows three times, with the same answers in the fourth column. */
function rowBooks() {
  const formula = (row: number, text: string): string => `<c r="D${row}"><f>${text}</f></c>`;
  return {
    calls: {
      name: "one FOOT call a row",
      bytes: workbookWith((row) => formula(row, `FOOT.CLEARDATE(A${row},B${row})`)),
    },
    builtIn: {
      name: "a built-in function in place of the calls",
      bytes: workbookWith((row) => formula(row, `SUM(A${row},B${row},1)`)),
    },
    constants: {
      name: "constants in place of the calls",
      bytes: workbookWith((row) => `<c r="D${row}"><v>${dateIn(row) + daysIn(row) + 1}</v></c>`),
    },
  } satisfies Record<string, RowBook>;
}

/** What 10,000 calls add where starting and the first, slow calls of everything are over. */
async function inWarmProcess({ calls, builtIn, constants }: ReturnType<typeof rowBooks>) {
  const books: readonly RowBook[] = [calls, builtIn, constants];
  const times = books.map((): number[] => []);
  for (const { bytes } of books) await timeOf(bytes);
  // In turn, so that a machine that slows down slows all.
  for (let round = 0; round < rounds; round++)
    for (const [at, { bytes }] of books.entries()) times[at]?.push(await timeOf(bytes));
  // The least, because whatever disturbs a measurement only adds to it.
  const [ofCalls, ofBuiltIn, ofConstants] = times.map((list) => Math.min(...list)) as [number, number, number];
  const aCall = ((ofCalls - ofConstants) / rows) * 1e6;
  const asBuiltIn = ofCalls / ofBuiltIn;
  const note = `In a warm process, without starting, the ${rows.toLocaleString("en")} rows take ${inSeconds(ofCalls)} with FOOT calls, ${inSeconds(ofBuiltIn)} with a built-in function of the same cells that gives the same (SUM), and ${inSeconds(ofConstants)} with constants: the least of ${rounds} rounds in turn. So a row of FOOT costs ${asBuiltIn.toFixed(2)} times one of any other function, and ${(ofCalls / ofConstants).toFixed(2)} times one in which there is nothing to work out, which is ${aCall.toFixed(0)} µs a formula, with reading it and writing its answer.`;
  return { asBuiltIn, aCall, note };
}

async function timeOf(bytes: Uint8Array): Promise<number> {
  const before = process.cpuUsage();
  const engine = engineInNode();
  const { summary } = await recalculate(openWorkbook(bytes, usualLimits, nodePacking), engine);
  if (summary.errors.length > 0) throw new Error(`the bench workbook has errors: ${JSON.stringify(summary.errors[0])}`);
  const { user, system } = process.cpuUsage(before);
  return (user + system) / 1e6;
}

const dateIn = (row: number): number => 46_000 + (row % 365);
const daysIn = (row: number): number => 1 + (row % 35);
const inSeconds = (time: number): string => `${time.toFixed(2)} s`;

function workbookWith(fourth: (row: number) => string): Uint8Array {
  const lines = Array.from({ length: rows }, (_, index) => {
    const row = index + 1;
    const count =
      row <= 50
        ? `<c r="F${row}"><f>COUNTIFS($C$1:$C$${rows},${row % 10},$D$1:$D$${rows},"&gt;="&amp;A${row})</f></c>`
        : "";
    return `<row r="${row}"><c r="A${row}"><v>${dateIn(row)}</v></c><c r="B${row}"><v>${daysIn(row)}</v></c><c r="C${row}"><v>${row % 10}</v></c>${fourth(row)}${count}</row>`;
  });
  return workbookOf(lines);
}

function workbookOf(lines: readonly string[]): Uint8Array {
  const main = "http://schemas.openxmlformats.org/spreadsheetml/2006/main";
  const relationships = "http://schemas.openxmlformats.org/officeDocument/2006/relationships";
  const packageRelationships = "http://schemas.openxmlformats.org/package/2006/relationships";
  return zipSync({
    "[Content_Types].xml": strToU8(
      `<Types xmlns="http://schemas.openxmlformats.org/package/2006/content-types"><Default Extension="rels" ContentType="application/vnd.openxmlformats-package.relationships+xml"/><Default Extension="xml" ContentType="application/xml"/><Override PartName="/xl/workbook.xml" ContentType="application/vnd.openxmlformats-officedocument.spreadsheetml.sheet.main+xml"/><Override PartName="/xl/worksheets/sheet1.xml" ContentType="application/vnd.openxmlformats-officedocument.spreadsheetml.worksheet+xml"/></Types>`,
    ),
    "_rels/.rels": strToU8(
      `<Relationships xmlns="${packageRelationships}"><Relationship Id="r1" Type="${relationships}/officeDocument" Target="xl/workbook.xml"/></Relationships>`,
    ),
    "xl/workbook.xml": strToU8(
      `<workbook xmlns="${main}" xmlns:r="${relationships}"><sheets><sheet name="Cases" sheetId="1" r:id="r1"/></sheets></workbook>`,
    ),
    "xl/_rels/workbook.xml.rels": strToU8(
      `<Relationships xmlns="${packageRelationships}"><Relationship Id="r1" Type="${relationships}/worksheet" Target="worksheets/sheet1.xml"/></Relationships>`,
    ),
    "xl/worksheets/sheet1.xml": strToU8(
      `<worksheet xmlns="${main}"><sheetData>${lines.join("")}</sheetData></worksheet>`,
    ),
  });
}

/** Invented treatments, four of each animal, and so many lists of what is in withdrawal, each for another day. */
function manyLists(): Uint8Array {
  const lines = Array.from({ length: listRows }, (_, index) => {
    const row = index + 1;
    const tag = `ZZ 0123456 ${String((index % (listRows / 4)) + 1).padStart(5, "0")}`;
    const cells = `<c r="A${row}" t="inlineStr"><is><t>${tag}</t></is></c><c r="B${row}"><v>${45_000 + Math.floor((index * 700) / listRows)}</v></c><c r="C${row}"><v>${[0, 7, 28, 35][index % 4]}</v></c>`;
    return `<row r="${row}">${cells}${index === 0 ? listCells() : ""}</row>`;
  });
  return workbookOf(lines);
}

function listCells(): string {
  const column = (letter: string): string => `$${letter}$1:$${letter}$${listRows}`;
  return Array.from({ length: lists }, (_, list) => {
    const call = `FOOT.NOTCLEAR(${45_650 + list},${column("A")},${column("B")},${column("C")})`;
    return `<c r="${placeText({ row: 0, column: 5 + 4 * list })}"><f>${call}</f></c>`;
  }).join("");
}
