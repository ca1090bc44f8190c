import { expect, it } from "vitest";
import type { PrintedCell, PrintedChart, PrintedSheet } from "../../../src/pages/practice/grid/sheetToPrint.ts";
import { cellsIn, filledRows, layPages } from "../../../src/pages/practice/printing/layPages.ts";
import { paperWish } from "../../../src/pages/practice/printing/paperWish.ts";

const cell = (column: number, text: string, columns = 1, size?: number): PrintedCell => ({
  column,
  text,
  columns,
  rows: 1,
  align: "left",
  isNumber: false,
  edges: [],
  bold: false,
  size,
  ink: undefined,
  ground: undefined,
});
const row = (cells: readonly PrintedCell[], height = 20) => ({ cells, height, isPageBegin: false });
const sheet = (widths: readonly number[], more: Partial<PrintedSheet> = {}): PrintedSheet => ({
  name: "Cases",
  widths,
  frozen: 0,
  headings: [],
  rows: [row(widths.map((_, column) => cell(column, "a")))],
  lines: false,
  charts: [],
  wish: paperWish(""),
  ...more,
});
const columns = (given: PrintedSheet) => layPages(given).parts.map((part) => part.columns);
// A4 less a centimetre on each side is 190 by 277 mm (ISO 216), at 96 pixels to 25.4 mm.
const [upright, lengthwise] = [(190 / 25.4) * 96, (277 / 25.4) * 96];

it("lays a narrow sheet upright and a wider one lengthwise, in its own size", () => {
  expect(layPages(sheet([300, 300]))).toMatchObject({ orientation: "portrait", zoom: 1 });
  expect(layPages(sheet([500, 500]))).toMatchObject({ orientation: "landscape", zoom: 1 });
  expect(
    layPages(sheet([300], { wish: paperWish('<a><sheetData/><pageSetup orientation="landscape"/></a>') })),
  ).toMatchObject({ orientation: "landscape" });
});

it.each([[[400, 400, 400]], [Array<number>(40).fill(120)], [[200, 1300, 200]], [Array<number>(9).fill(333)]])(
  "prints no letters below 8 points and nothing wider than the paper, and every column once: %j",
  (widths) => {
    const { orientation, zoom, parts } = layPages(sheet(widths));
    expect(11 * zoom).toBeGreaterThanOrEqual(8 - 1e-9);
    for (const part of parts) {
      const wide = part.widths.reduce((sum, width) => sum + width, 0) * zoom;
      expect(wide).toBeLessThanOrEqual((orientation === "portrait" ? upright : lengthwise) + 1e-9);
    }
    expect(parts.flatMap((part) => part.columns)).toEqual(widths.map((_, column) => column));
  },
);

it("takes the smallest letters of the sheet as the measure", () => {
  const small = sheet([400, 400, 400], { rows: [row([cell(0, "a", 1, 8)])] });
  expect(layPages(small)).toMatchObject({ zoom: 1 });
  expect(layPages(small).parts.length).toBe(2);
});

it("repeats the columns that stay in sight beside the others, and says long texts once", () => {
  const wide = sheet([200, 700, 700], { frozen: 1, rows: [row([cell(0, "a long hint", 3)]), row([cell(0, "Tag")])] });
  expect(columns(wide)).toEqual([
    [0, 1],
    [0, 2],
  ]);
  const [first, second] = layPages(wide).parts;
  const texts = (part: typeof first) => wide.rows.map((one) => part && cellsIn(one, part).map(({ text }) => text));
  expect(texts(first)).toEqual([["a long hint"], ["Tag"]]);
  expect(texts(second)).toEqual([[""], ["Tag"]]);
});

it("cuts no chart between two pages where it has room on one", () => {
  const chart = { picture: {}, row: 0, down: 0, left: 400, width: 1400, height: 200 } as PrintedChart;
  expect(columns(sheet([400, 600, 800]))).toEqual([[0, 1], [2]]);
  expect(columns(sheet([400, 600, 800], { charts: [chart] }))).toEqual([[0], [1, 2]]);
});

it("keeps on one page what its file has on one, as long as it can be read there", () => {
  const form = paperWish(
    '<worksheet><sheetPr><pageSetUpPr fitToPage="1"/></sheetPr><sheetData></sheetData></worksheet>',
  );
  const rows = (count: number) => Array.from({ length: count }, () => row([cell(0, "a")]));
  const zoom = (count: number, wish = form) => layPages(sheet([300], { rows: rows(count), wish })).zoom;
  // 1,020 pixels less 5 % for what is higher on paper, over 60 rows of 20 pixels.
  expect(zoom(60)).toBeCloseTo((1020 * 0.95) / 1200, 10);
  expect(zoom(60, paperWish(""))).toBe(1);
  expect(zoom(600)).toBe(1);
});

it("lets a form lose a little height of its lines before it goes on to another page", () => {
  const form = paperWish(
    '<worksheet><sheetPr><pageSetUpPr fitToPage="1"/></sheetPr><sheetData></sheetData></worksheet>',
  );
  const rows = Array.from({ length: 75 }, () => row([cell(0, "")]));
  const { zoom, squeeze } = layPages(sheet([300], { rows, wish: form }));
  expect(zoom).toBeCloseTo(8 / 11, 10);
  expect(75 * 20 * squeeze * zoom).toBeLessThanOrEqual(1020 * 0.95 + 1e-9);
  expect(squeeze).toBeGreaterThan(0.75);
});

it("goes on with each part only as far as something stands in it", () => {
  const rows = [row([cell(0, "a"), cell(1, "b")]), row([cell(0, "a"), cell(1, "")]), row([cell(0, ""), cell(1, "")])];
  const part = (columns: readonly number[]) => ({ columns, widths: columns.map(() => 100), again: 0, room: 1000 });
  expect([filledRows(rows, part([0])), filledRows(rows, part([1])), filledRows([], part([0]))]).toEqual([2, 1, 0]);
});

it("reads what a file says of paper", () => {
  const told = (head: string, tail: string) =>
    paperWish(`<worksheet>${head}<sheetData></sheetData>${tail}</worksheet>`);
  const fits = '<sheetPr><pageSetUpPr fitToPage="true"/></sheetPr>';
  expect(told(fits, '<pageSetup fitToHeight="0" orientation="landscape"/>')).toMatchObject({
    isOnePage: false,
    orientation: "landscape",
  });
  expect(told(fits, "<pageSetup/>").isOnePage).toBe(true);
  expect(told("", '<rowBreaks count="1"><brk id="42" max="16383" man="1"/></rowBreaks>').pagesBeginAt).toEqual(
    new Set([42]),
  );
});
