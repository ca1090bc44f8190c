import { beforeAll, describe, expect, test } from "vitest";
import type { Cell } from "../../src/cells/cell.ts";
import type { ComparisonContent } from "../../src/workbooks/comparison/comparisonContent.ts";
import { flockComparison } from "../../src/workbooks/comparison/flockComparison.ts";
import { inventedComparison } from "../../src/workbooks/comparison/inventedComparison.ts";
import { settledFigures } from "../../src/workbooks/comparison/settledFigures.ts";
import { workedOut } from "../../src/workbooks/workedOut.ts";
import { sheetCells } from "../samples/sheetCells.ts";

const { flocks, ...rest } = inventedComparison(7);
const few = flocks.slice(0, 9);
// One that cannot count stands among them.
const typed: ComparisonContent = {
  ...rest,
  chosen: few[4]?.flock,
  flocks: few.map((flock, place) => (place === 3 ? { ...flock, lame: undefined } : flock)),
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
    collated = await cellsOf({ ...typed, books });
  }, 300_000);

  test("shows what the formulas of a typed one give, to the last digit", () => {
    for (const name of ["Comparison", "One flock"]) expect(sheet(collated, name)).toEqual(sheet(live, name));
  });

  test("orders its flocks for the charts as the formulas do", () => {
    const heading =
      [...live].find(([address, cell]) => /^Figures![A-Z]+5$/.test(address) && cell === "name")?.[0] ?? "";
    const column = heading.replace(/^Figures!|5$/g, "");
    const names = (cells: ReadonlyMap<string, Cell>) =>
      Array.from({ length: few.length }, (_, place) => cells.get(`Figures!${column}${6 + place}`) || null);
    expect(names(live).filter((name) => name !== null)).toHaveLength(few.length - 1);
    expect(names(collated)).toEqual(names(live));
  });
});

test("figures are settled for collated rows only, and a name that stands twice does not count", () => {
  expect(settledFigures(typed)).toBeUndefined();
  const twice = few.map((flock, place) => (place === 1 ? { ...flock, flock: ` ${few[0]?.flock} ` } : flock));
  const places = settledFigures({ ...typed, flocks: twice, books })?.places;
  expect(places).toEqual([undefined, undefined, 1, 2, 3, 4, 5, 6, 7]);
});
