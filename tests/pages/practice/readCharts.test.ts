import { readFileSync } from "node:fs";
import { strFromU8, strToU8, unzipSync, zipSync } from "fflate";
import { expect, it } from "vitest";
import { readCharts } from "../../../src/pages/practice/charts/readCharts.ts";
import { openWorkbook } from "../../../src/workbook/openWorkbook.ts";

const foot = readFileSync("samples/flock-foot-book.xlsx");
const place = (of: ReturnType<typeof openWorkbook>): number => of.sheets.findIndex(({ name }) => name === "Picture");

it("reads the charts that stand between two cells, with what their figures are", () => {
  const workbook = openWorkbook(foot);
  const { charts, others } = readCharts(workbook, place(workbook));
  expect(others).toBe(0);
  expect(charts.map(({ title, series, lying, shares }) => [title, series[0]?.kind, lying, shares])).toEqual([
    ["Share lame by month", "line", false, true],
    ["New cases by month", "bars", false, false],
    ["What made them lame", "bars", true, true],
    ["Still lame, days after treatment", "line", false, true],
  ]);
  expect(charts[0]?.series.map(({ dash, points }) => [dash, points])).toEqual([
    ["solid", true],
    ["solid", false],
    ["dashed", false],
    ["dashed", false],
    ["dotted", false],
  ]);
  // The first lesion, the commonest, is written on top.
  expect(charts[2]?.fromTop).toBe(true);
});

it("counts a chart that stands otherwise among those that are not drawn", () => {
  const files = unzipSync(foot);
  for (const [name, part] of Object.entries(files))
    if (/drawings\/drawing\d+\.xml$/.test(name))
      files[name] = strToU8(strFromU8(part).replaceAll("twoCellAnchor", "oneCellAnchor"));
  const workbook = openWorkbook(zipSync(files));
  expect(readCharts(workbook, place(workbook))).toEqual({ charts: [], others: 4 });
});

it("reads bars that stand on others, each series with a kind of its own", () => {
  const workbook = openWorkbook(readFileSync("samples/flock-comparison.xlsx"));
  const read = workbook.sheets.map((_, index) => readCharts(workbook, index));
  const [funnel, league] = read.flatMap(({ charts }) => charts);
  expect(league?.stacked).toBe(true);
  // The first carries the range and is not seen; the steadied share is points without a line, the target a line.
  expect(league?.series.map(({ kind, unseen, points, colour }) => [kind, unseen, points, colour])).toEqual([
    ["bars", true, false, undefined],
    ["bars", false, false, "#C9D8D0"],
    ["line", true, true, "#2F5D50"],
    ["line", false, false, "#1F2A24"],
  ]);
  expect(read.map(({ others }) => others)).toEqual(read.map(() => 0));
  expect([funnel?.scattered, funnel?.shares, funnel?.acrossName]).toEqual([true, true, "sheep looked at"]);
  expect(funnel?.series.map(({ unseen, points, dash }) => [unseen, points, dash])).toEqual([
    [true, true, "solid"],
    [false, false, "dashed"],
    [false, false, "dashed"],
    [false, false, "dotted"],
    [false, false, "dotted"],
    // What the flocks are measured by.
    [false, false, "solid"],
  ]);
});

it.each([
  ["a second axis for figures", "</valAx>", '</valAx><valAx><axId val="9"></axId></valAx>'],
  ["lines summed up", 'grouping val="standard"', 'grouping val="stacked"'],
  ["lines as shares of their sum", 'grouping val="standard"', 'grouping val="percentStacked"'],
])("counts a chart with %s among those that are not drawn, since it would be drawn wrong", (_, from, to) => {
  const files = unzipSync(foot);
  const [name = "", part] = Object.entries(files).find(([known]) => known.endsWith("charts/chart1.xml")) ?? [];
  files[name] = strToU8(strFromU8(part ?? new Uint8Array()).replace(from, to));
  const workbook = openWorkbook(zipSync(files));
  const { charts, others } = readCharts(workbook, place(workbook));
  expect([charts.length, others]).toEqual([3, 1]);
});
