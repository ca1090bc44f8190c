import { execFileSync } from "node:child_process";
import { writeFileSync } from "node:fs";
import { join } from "node:path";
import { isDeepStrictEqual } from "node:util";
import { dayOf } from "../../src/cells/day.ts";
import { engineInNode } from "../../src/hosts/headless/engineInNode.ts";
import { openWorkbook } from "../../src/workbook/openWorkbook.ts";
import { recalculate } from "../../src/workbook/recalculate.ts";
import { sheetCells } from "../samples/sheetCells.ts";
import { type Calc, type CalcCell, type CalcWorkbook, startCalc } from "../spreadsheets/startCalc.ts";
import { buildWorkbook } from "../workbook/buildWorkbook.ts";
import type { BenchReport } from "./report.ts";
import { showTime } from "./show.ts";

const records = 10_000;
const animals = 2500;
const gathers = 50;
const gap = 14;
const asOf = dayOf("2025-12-01");
const first = dayOf("2025-06-01");
const last = records + 1;
const rounds = 3;
/**
 * How many times as long as the formulas by hand the functions may take in LibreOffice, given a column at a time. For a
 * call in each row there is no limit here: 10,000 calls of any extension function take LibreOffice 2.5 s, whatever they
 * do, and tests/bench/bridge.bench.ts holds ours to that.
 */
const most = 5;

/** The same work by this project's functions, and by a spreadsheet's own formulas as a careful person writes them out. */
export async function bench(): Promise<BenchReport> {
  execFileSync("npm", ["run", "--silent", "build:libreoffice"], { stdio: "inherit" });
  const [calls, columns, formulas] = [bookOf(withFunctions), bookOf(byColumns), bookOf(byHand)];
  const calc = await startCalc("25.2");
  try {
    const worked = await inEngine(calls);
    const ours = answersOf(cellsIn(worked.bytes));
    agree("the formulas by hand", byHandOf(cellsOf(await inCalc(calc, formulas))), ours);
    const inColumns = await inEngine(columns);
    agree("the columns", answersOf(cellsIn(inColumns.bytes)), ours);
    agree("LibreOffice", answersOf(cellsOf(await inCalc(calc, worked.bytes))), ours);
    agree("LibreOffice, with columns", answersOf(cellsOf(await inCalc(calc, inColumns.bytes))), ours);
    const times = { columns: [] as number[], calc: [] as number[], hand: [] as number[], whole: [] as number[] };
    // In turn, so that a machine that slows down slows all.
    for (let round = 0; round < rounds; round++) {
      times.whole.push((await inEngine(calls)).time);
      times.columns.push((await inCalc(calc, inColumns.bytes)).processorSeconds * 1000);
      times.calc.push((await inCalc(calc, worked.bytes)).processorSeconds * 1000);
      times.hand.push((await inCalc(calc, formulas)).processorSeconds * 1000);
    }
    const least = (some: readonly number[]): number => Math.min(...some);
    const hand = least(times.hand);
    const line = (how: string, time: number) => ({
      how,
      "processor time": showTime(time),
      "by hand = 1": String(Number((time / hand).toPrecision(2))),
    });
    return {
      title: "Against a spreadsheet's own formulas",
      rows: [
        line("formulas by hand, LibreOffice works them out", hand),
        line("FOOT functions given a column each, LibreOffice works them out", least(times.columns)),
        line("FOOT functions, CLEARDATE in each of the rows, LibreOffice works them out", least(times.calc)),
        line(
          "FOOT functions, the recalculation that `soundfold recalc` runs, in a warm process, from the bytes of a file to those of the next",
          least(times.whole),
        ),
      ],
      notes: [
        `${records.toLocaleString("en")} records of ${animals.toLocaleString("en")} invented animals: the clear date of each, the number of each record's case in its animal, the share lame at ${gathers} gathers, and the animals not clear on a day. By hand: the records sorted by animal and day beforehand (not in the time), then IF and MAX over a row and the one above it, and SUMIFS for the gathers. With FOOT: one CASENO, PREVBY and NOTCLEAR, and CLEARDATE once for the whole column or once a row, the records in any order. A call in each row costs what LibreOffice takes to call an extension at all, whatever it does.`,
        `Before anything is timed every answer of the three is compared. Least processor time of ${rounds} rounds run in turn, LibreOffice 25.2 with all its threads. LibreOffice's time is that of a hard recalculation alone, without opening or saving; for FOOT in LibreOffice the time of the program of the extension, a process of its own, comes on top. Formulas by hand check nothing: a tag in two spellings is two animals to them, and a date that is text or missing withdrawal days count as what the formula makes of them.`,
      ],
      limits: [
        {
          what: "FOOT functions given a column each in LibreOffice, by hand = 1,",
          measured: least(times.columns) / hand,
          most,
        },
      ],
    };
  } finally {
    await calc.stop();
  }
}

const animalOf = (record: number): number => (record * 7919) % animals;
const tagOf = (record: number): string => `ZZ 0 123456 ${String(animalOf(record)).padStart(5, "0")}`;
// An animal's records lie some days apart, never two on one day.
const dayOfRecord = (record: number): number =>
  first + ((animalOf(record) * 13) % 60) + Math.floor(record / animals) * 40 + (record % 3) * 7;
// None of 0 days: LibreOffice cannot tell a lone 0 from a blank cell, and the function then refuses it.
const daysOf = (record: number): number => [3, 7, 14, 28, 35][record % 5] as number;

interface Filled {
  /** The records in the order of their rows. */
  readonly order: readonly number[];
  /** The formulas beside a record, in columns G and on. */
  readonly beside: (row: number) => readonly string[];
  /** Formulas of the sheet Answers that fill cells, and how many. */
  readonly answers: readonly { readonly at: string; readonly formula: string }[];
}

const column = (letter: string): string => `${letter}$2:${letter}$${last}`;

const asTheyCame = Array.from({ length: records }, (_, record) => record);

// By hand the records are sorted first, by animal and then by day, so that each formula looks at its neighbours only.
const byAnimalAndDay = [...asTheyCame].sort(
  (a, b) => animalOf(a) - animalOf(b) || dayOfRecord(a) - dayOfRecord(b) || a - b,
);

const withFunctions: Filled = {
  order: asTheyCame,
  beside: (row) => [
    `_xldudf_FOOT_CLEARDATE(B${row},C${row})`,
    ...(row === 2 ? [`_xldudf_FOOT_CASENO(${column("A")},${column("B")},${column("A")},${column("B")},${gap})`] : []),
  ],
  answers: [
    { at: "A1", formula: `_xldudf_FOOT_PREVBY(Cases!${column("D")},Cases!${column("E")},Cases!${column("F")})` },
    {
      at: "H1",
      formula: `_xldudf_FOOT_NOTCLEAR(${asOf},Cases!${column("A")},Cases!${column("B")},Cases!${column("C")})`,
    },
  ],
};

const byColumns: Filled = {
  ...withFunctions,
  beside: (row) =>
    row === 2 ? [`_xldudf_FOOT_CLEARDATE(${column("B")},${column("C")})`, ...withFunctions.beside(row).slice(1)] : [],
};

const byHand: Filled = {
  order: byAnimalAndDay,
  beside: (row) => [
    `IF(C${row}=0,B${row},B${row}+C${row}+1)`,
    // Which case: another one begins when the animal's record before lies further back than the gap.
    `IF(A${row}=A${row - 1},H${row - 1}+IF(B${row}-B${row - 1}>${gap},1,0),1)`,
    // The latest clear date so far, and at the animal's last record that of all.
    `IF(A${row}=A${row - 1},MAX(I${row - 1},G${row}),G${row})`,
    `IF(A${row}=A${row + 1},"",I${row})`,
    `IF(J${row}="",0,IF(J${row}>${asOf},1,0))`,
  ],
  answers: Array.from({ length: gathers }, (_, gather) => [
    { at: `A${gather + 2}`, formula: `"gather ${gather}"` },
    {
      at: `D${gather + 2}`,
      formula: `SUMIFS(Cases!${column("E")},Cases!${column("D")},A${gather + 2})/SUMIFS(Cases!${column("F")},Cases!${column("D")},A${gather + 2})`,
    },
  ]).flat(),
};

function bookOf({ order, beside, answers }: Filled): Uint8Array {
  const rows = order.map((record, at) => {
    const row = at + 2;
    const constants = `${text(`A${row}`, tagOf(record))}${number(`B${row}`, dayOfRecord(record))}${number(`C${row}`, daysOf(record))}${text(`D${row}`, `gather ${record % gathers}`)}${number(`E${row}`, record % 7)}${number(`F${row}`, 20 + (record % 80))}`;
    const worked = beside(row).map((formula, index) => formulaCell(`${"GHIJK"[index]}${row}`, formula));
    return `<row r="${row}">${constants}${worked.join("")}</row>`;
  });
  const byRow = new Map<number, string[]>();
  for (const { at, formula } of answers) {
    const row = Number(at.replace(/\D/g, ""));
    byRow.set(row, [...(byRow.get(row) ?? []), formulaCell(at, formula)]);
  }
  const answering = [...byRow].map(([row, cells]) => `<row r="${row}">${cells.join("")}</row>`);
  return buildWorkbook({
    sheets: [
      { name: "Cases", rows: rows.join("") },
      { name: "Answers", rows: answering.join("") },
    ],
  });
}

const escaped = (formula: string): string => formula.replaceAll("&", "&amp;").replaceAll("<", "&lt;");
const formulaCell = (at: string, formula: string): string => `<c r="${at}"><f>${escaped(formula)}</f></c>`;
const number = (at: string, value: number): string => `<c r="${at}"><v>${value}</v></c>`;
const text = (at: string, value: string): string => `<c r="${at}" t="inlineStr"><is><t>${value}</t></is></c>`;

async function inEngine(bytes: Uint8Array): Promise<{ readonly bytes: Uint8Array; readonly time: number }> {
  const before = process.cpuUsage();
  const worked = await recalculate(openWorkbook(bytes), engineInNode());
  const { user, system } = process.cpuUsage(before);
  const { errors, left } = worked.summary;
  if (errors.length + left.length > 0)
    throw new Error(`the bench workbook is wrong: ${JSON.stringify([errors, left])}`);
  return { bytes: worked.bytes, time: (user + system) / 1000 };
}

function inCalc(calc: Calc, bytes: Uint8Array): Promise<CalcWorkbook> {
  const path = join(calc.folder, "book.xlsx");
  writeFileSync(path, bytes);
  return calc.read(path);
}

/** What a cell of a sheet holds; blank is `""`. */
type Cells = (sheet: "Cases" | "Answers", column: string, row: number) => CalcCell;

const cellsOf =
  ({ sheets }: CalcWorkbook): Cells =>
  (sheet, column, row) =>
    sheets[sheet]?.[row - 1]?.[column.charCodeAt(0) - 65] ?? "";

function cellsIn(bytes: Uint8Array): Cells {
  const cells = sheetCells(bytes);
  return (sheet, column, row) => {
    const cell = cells.get(`${sheet}!${column}${row}`) ?? "";
    return typeof cell === "boolean" ? Number(cell) : cell;
  };
}

/** All answers, in a form in which they can be compared. */
interface Answers {
  readonly clearAndCase: readonly (readonly [CalcCell, CalcCell])[];
  readonly shares: ReadonlyMap<CalcCell, CalcCell>;
  readonly notClear: ReadonlyMap<CalcCell, CalcCell>;
}

/** In the order of the records, wherever their rows stand. */
function besides(cells: Cells, order: readonly number[]): Answers["clearAndCase"] {
  const found: [CalcCell, CalcCell][] = [];
  order.forEach((record, at) => {
    found[record] = [cells("Cases", "G", at + 2), cells("Cases", "H", at + 2)];
  });
  return found;
}

function answersOf(cells: Cells): Answers {
  const listed = (name: string, value: string): Map<CalcCell, CalcCell> => {
    const found = new Map<CalcCell, CalcCell>();
    for (let row = 2; cells("Answers", name, row) !== ""; row++)
      found.set(cells("Answers", name, row), cells("Answers", value, row));
    return found;
  };
  const shares = listed("A", "D");
  shares.delete("all");
  return { clearAndCase: besides(cells, asTheyCame), shares, notClear: listed("H", "I") };
}

function byHandOf(cells: Cells): Answers {
  const rows = Array.from({ length: records }, (_, record) => record + 2);
  const shares = Array.from({ length: gathers }, (_, gather) => gather + 2);
  return {
    clearAndCase: besides(cells, byAnimalAndDay),
    shares: new Map(shares.map((row) => [cells("Answers", "A", row), cells("Answers", "D", row)])),
    notClear: new Map(
      rows
        .filter((row) => cells("Cases", "K", row) === 1)
        .map((row) => [cells("Cases", "A", row), cells("Cases", "J", row)]),
    ),
  };
}

/** @throws Error when the answers are not the same, or when there is little to compare */
function agree(whose: string, theirs: Answers, ours: Answers): void {
  const plain = ({ clearAndCase, shares, notClear }: Answers) => ({
    clearAndCase,
    // The last digit of a share may differ between programs.
    shares: [...shares]
      .map(([name, share]) => [name, typeof share === "number" ? share.toPrecision(12) : share])
      .sort(),
    notClear: [...notClear].sort(),
  });
  const [one, other] = [plain(theirs), plain(ours)];
  for (const part of ["clearAndCase", "shares", "notClear"] as const) {
    const index = other[part].findIndex((wanted, at) => !isDeepStrictEqual(one[part][at], wanted));
    if (index !== -1 || one[part].length !== other[part].length)
      throw new Error(
        `${whose}: ${part} ${index} is ${JSON.stringify(one[part][index])}, not ${JSON.stringify(other[part][index])} (${one[part].length} and ${other[part].length})`,
      );
  }
  if (
    ours.shares.size !== gathers ||
    ours.notClear.size < 50 ||
    new Set(ours.clearAndCase.map(([, number]) => number)).size < 2
  )
    throw new Error("the bench workbook asks for too little");
}
