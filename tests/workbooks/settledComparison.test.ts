import { beforeAll, describe, expect, test } from "vitest";
import type { Cell } from "../../src/cells/cell.ts";
import { openWorkbook } from "../../src/workbook/openWorkbook.ts";
import type { ComparisonContent } from "../../src/workbooks/comparison/comparisonContent.ts";
import { flockComparison } from "../../src/workbooks/comparison/flockComparison.ts";
import { inventedComparison } from "../../src/workbooks/comparison/inventedComparison.ts";
import { settledFigures } from "../../src/workbooks/comparison/settledFigures.ts";
import { workedOut } from "../../src/workbooks/workedOut.ts";
import { sheetCells } from "../samples/sheetCells.ts";

const { flocks, done, ...rest } = inventedComparison(7);
const few = flocks.slice(0, 9);
// One that cannot count stands among them.
const typed: ComparisonContent = {
  ...rest,
  books: [],
  chosen: few[4]?.flock,
  flocks: few.map((flock, index) => (index === 3 ? { ...flock, lame: undefined } : flock)),
};
const books = few.map(({ flock }) => ({
  file: `${flock}.xlsx`,
  flock,
  used: true,
  records: 20,
  toMend: 0,
  words: "",
}));

const cellsOf = async (content: ComparisonContent): Promise<ReadonlyMap<string, Cell>> =>
  sheetCells((await workedOut(flockComparison(content))).bytes);

const sheet = (cells: ReadonlyMap<string, Cell>, name: string): ReadonlyMap<string, Cell> =>
  new Map([...cells].filter(([address, cell]) => address.startsWith(`${name}!`) && cell !== "" && cell !== null));

describe("a collated comparison", () => {
  let live: ReadonlyMap<string, Cell>;
  let collated: ReadonlyMap<string, Cell>;
  beforeAll(async () => {
    live = await cellsOf(typed);
    collated = await cellsOf({ ...typed, books, done: (done ?? []).slice(0, few.length) });
  }, 300_000);

  test("shows what the formulas of a typed one give, to the last digit", () => {
    // One line says what the words about the target hang on, which differs.
    const compared = (cells: ReadonlyMap<string, Cell>) =>
      [...sheet(cells, "Comparison")].filter(([address]) => address !== "Comparison!A7");
    expect(compared(collated)).toEqual(compared(live));
    expect(compared(live).filter(([at, cell]) => /!D\d/.test(at) && cell === 10)).toHaveLength(few.length - 1);
    const page = (cells: ReadonlyMap<string, Cell>) => {
      const rows = new Map<number, Map<string, Cell>>();
      for (const [address, cell] of sheet(cells, "One flock")) {
        const [, column = "", row = ""] = /!([A-Z]+)(\d+)/.exec(address) ?? [];
        rows.set(Number(row), (rows.get(Number(row)) ?? new Map()).set(column, cell));
      }
      const listFrom = Math.max(...[...rows].flatMap(([row, found]) => (found.get("A") === "flock" ? [row] : [])));
      const inRows = [...rows].sort(([one], [other]) => one - other);
      // The list stands in two blocks side by side, which break where there is room for so many.
      const list = ["ABC", "EFG"].flatMap((block) =>
        inRows.flatMap(([row, found]) => (row > listFrom ? [[...block].map((column) => found.get(column))] : [])),
      );
      return { above: inRows.filter(([row]) => row < 16), list: list.filter(([name]) => name !== undefined) };
    };
    // What is done has lines of its own where the flocks were read from books.
    expect(page(collated).above).toEqual(expect.arrayContaining(page(live).above));
    expect(page(collated).list).toEqual(page(live).list);
    expect(page(live).list).toHaveLength(few.length - 1);
  });

  test("has its lists and limits as the functions give them", () => {
    const list = sheet(collated, "Figures");
    // In the room for more flocks the formulas of a typed one give errors that leave gaps in the charts.
    const there = [...sheet(live, "Figures")].filter(
      ([address, cell]) =>
        list.has(address) || (typeof cell === "number" && Number(/\d+$/.exec(address)?.[0]) <= 5 + few.length),
    );
    expect(there.length).toBeGreaterThan(350);
    for (const [address, cell] of there) expect([address, list.get(address)]).toEqual([address, cell]);
  });

  test("needs the functions nowhere", async () => {
    const content = { ...typed, books, done: (done ?? []).slice(0, few.length) };
    const { sheets } = openWorkbook((await workedOut(flockComparison(content))).bytes);
    const formulas = sheets.flatMap(({ name, rows }) =>
      rows.flatMap((row) =>
        row.cells.flatMap(({ formula }) => (formula ? [`${name}: ${JSON.stringify(formula)}`] : [])),
      ),
    );
    expect(formulas.length).toBeGreaterThan(30);
    expect(formulas.filter((formula) => /FOOT/.test(formula))).toEqual([]);
  });

  test("orders its flocks for the charts as the formulas do", () => {
    const heading =
      [...live].find(([address, cell]) => /^Figures![A-Z]+5$/.test(address) && cell === "name")?.[0] ?? "";
    const column = heading.replace(/^Figures!|5$/g, "");
    const names = (cells: ReadonlyMap<string, Cell>) =>
      Array.from({ length: few.length }, (_, index) => cells.get(`Figures!${column}${6 + index}`) || null);
    expect(names(live).filter((name) => name !== null)).toHaveLength(few.length - 1);
    expect(names(collated)).toEqual(names(live));
  });
});

test("a name that stands twice does not count", () => {
  const twice = few.map((flock, index) => (index === 1 ? { ...flock, flock: ` ${few[0]?.flock} ` } : flock));
  const { places } = settledFigures({ ...typed, flocks: twice, books });
  expect(places).toEqual([undefined, undefined, 1, 2, 3, 4, 5, 6, 7]);
});
