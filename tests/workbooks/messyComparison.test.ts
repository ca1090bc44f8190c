import { readFileSync } from "node:fs";
import ExcelJS from "exceljs";
import { beforeAll, describe, expect, test } from "vitest";
import type { Cell } from "../../src/cells/cell.ts";
import { isCellError } from "../../src/cells/cell.ts";
import { dayOf } from "../../src/cells/day.ts";
import { engineInNode } from "../../src/hosts/headless/engineInNode.ts";
import { openWorkbook } from "../../src/workbook/openWorkbook.ts";
import { recalculate } from "../../src/workbook/recalculate.ts";
import { sheetNames } from "../../src/workbooks/comparison/placedComparison.ts";
import { rangeByHand } from "../cli/comparisonByHand.ts";
import { sheetCells } from "../samples/sheetCells.ts";

type Rows = readonly (readonly (string | number | null)[])[];

/** The empty comparison, typed into as by a person in another program, and worked out. */
async function typed(year: Cell, flocks: Rows, gathers: Rows, chosen: string): Promise<ReadonlyMap<string, Cell>> {
  const book = new ExcelJS.Workbook();
  await book.xlsx.load(readFileSync("samples/flock-comparison-empty.xlsx") as never);
  const put = (sheet: string, rows: Rows): void =>
    rows.forEach((cells, row) => {
      cells.forEach((value, column) => {
        if (value !== null) (book.getWorksheet(sheet) as ExcelJS.Worksheet).getCell(10 + row, 1 + column).value = value;
      });
    });
  put(sheetNames.flocks, flocks);
  put(sheetNames.gathers, gathers);
  (book.getWorksheet(sheetNames.flocks) as ExcelJS.Worksheet).getCell("B4").value = year as ExcelJS.CellValue;
  (book.getWorksheet(sheetNames.one) as ExcelJS.Worksheet).getCell("B3").value = chosen;
  const saved = new Uint8Array((await book.xlsx.writeBuffer()) as ArrayBuffer);
  const { bytes } = await recalculate(openWorkbook(saved), engineInNode(), undefined, { all: true });
  return sheetCells(bytes);
}

const sound: Rows = Array.from({ length: 6 }, (_, index) => [`Sound ${index + 1}`, 200 + index, 4 + index]);
const messy: Rows = [
  ["No gather", null, null, 100, 4],
  ["More lame", 40, 41],
  ["In words", "120", "six"],
  ["Text counts", "120", "6"],
  ["Twice", 100, 5],
  ["twice  ", 90, 4],
  ["Half", 90.5, 4],
  ["None seen", 0, 0],
  [null, 60, 3],
  ["Less than none", 60, -1],
];
const flocks: Rows = [...sound, ...messy];

describe("a comparison typed in a hurry", () => {
  let cells: ReadonlyMap<string, Cell>;
  let clean: ReadonlyMap<string, Cell>;
  beforeAll(async () => {
    cells = await typed(2026, flocks, [], "No gather");
    clean = await typed(2026, sound, [], "Sound 2");
  }, 120_000);
  const row = (of: ReadonlyMap<string, Cell>, index: number): readonly Cell[] =>
    [..."BCDEFGHIJKLMNOP"].map((column) => of.get(`${sheetNames.comparison}!${column}${10 + index}`) ?? null);

  test("answers for the sound rows as if the others were not there", () => {
    sound.forEach((_, index) => {
      expect(row(cells, index)).toEqual(row(clean, index));
    });
    expect(cells.get("Comparison!A3")).toBe(clean.get("Comparison!A3"));
  });

  test("says of each other row why it is left out, and gives no figure for it", () => {
    const said = messy.map((_, index) => cells.get(`Comparison!Q${16 + index}`));
    expect(said).toEqual([
      "looked at or lame is missing",
      "more lame than looked at",
      "looked at or lame is no number",
      "looked at or lame is no number",
      "the name stands twice",
      "the name stands twice",
      "not a whole number of sheep",
      "no sheep looked at",
      "the flock has no name",
      "not a whole number of sheep",
    ]);
    messy.forEach((_, index) => {
      expect(
        row(cells, 6 + index)
          .slice(2)
          .every((cell) => cell === null || cell === ""),
      ).toBe(true);
    });
    expect(cells.get("Comparison!A8")).toBe("10 rows are left out: see the last column");
  });

  test("says on the page of a flock that does not count that it does not, and why", () => {
    expect(cells.get("One flock!B7")).toBe("not counted: looked at or lame is missing");
    const shown = [...cells].filter(([at, cell]) => /^One flock!B\d+$/.test(at) && typeof cell === "number");
    expect(shown.filter(([at]) => Number(at.slice("One flock!B".length)) < 16)).toEqual([]);
  });

  test("draws nothing for them", () => {
    const names = new Set(messy.map(([name]) => name).filter((name) => name !== null));
    const drawn = [...cells].filter(([at, cell]) => at.startsWith("Figures!") && names.has(cell as string));
    expect(drawn).toEqual([]);
    expect([...cells].filter(([at, cell]) => isCellError(cell) && !at.startsWith("Figures!"))).toEqual([]);
  });
});

describe("gathers typed in a hurry", () => {
  const [january, february] = [dayOf("2026-01-05"), dayOf("2026-02-05")];
  const gathers: Rows = [
    ["Sound 1", january, 100, 2],
    [" sound 1 ", february, 100, 2],
    ["Sound 2", "5.1.26", 100, 2],
    ["Sound 2", february, 101, 3],
    ["Sound 3", january, 100, 3],
    ["Sound 3", january, 102, 3],
    ["Sound 4", january, 103, "three"],
    ["Sound 4", february, 100, 101],
    ["Sund 4", february, 100, 4],
    [null, february, 100, 4],
    ["Sound 5", dayOf("2024-02-05"), 204, 8],
    ["Sound 6", january, 100.5, 4],
  ];
  let cells: ReadonlyMap<string, Cell>;
  beforeAll(async () => {
    cells = await typed(2026, sound, gathers, "Sound 1");
  }, 120_000);

  test("say row by row why they are not used", () => {
    expect(gathers.map((_, index) => cells.get(`Gathers!F${10 + index}`) ?? "")).toEqual([
      "",
      "",
      "the date is missing or no date",
      "",
      "the day stands twice: add the rows up",
      "the day stands twice: add the rows up",
      "looked at or lame is missing",
      "more lame than looked at",
      "no flock of that name, or two, on the sheet Flocks",
      "whose gather is this?",
      "neither of the year compared nor of the one before",
      "not a whole number of sheep",
    ]);
  });

  test("are used where a flock's gathers come to its totals, and all other flocks go by their totals", () => {
    expect(sound.map((_, index) => cells.get(`Comparison!D${10 + index}`) || undefined)).toEqual([
      2,
      "not used",
      "not used",
      "not used",
      "not used",
      "not used",
    ]);
    const gather = { lame: 2, seen: 100 };
    expect(Number(cells.get("Comparison!G10"))).toBeCloseTo(rangeByHand([gather, gather])[1], 7);
  });
});
