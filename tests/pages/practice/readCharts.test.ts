import { readFileSync } from "node:fs";
import { strFromU8, strToU8, unzipSync, zipSync } from "fflate";
import { expect, it } from "vitest";
import { readCharts } from "../../../src/pages/practice/charts/readCharts.ts";
import { openWorkbook } from "../../../src/workbook/openWorkbook.ts";

const bytes = readFileSync("samples/flock-foot-book.xlsx");
const place = (of: ReturnType<typeof openWorkbook>): number => of.sheets.findIndex(({ name }) => name === "Picture");

it("reads the charts that stand between two cells, with what their figures are", () => {
  const workbook = openWorkbook(bytes);
  const { charts, others } = readCharts(workbook, place(workbook));
  expect(others).toBe(0);
  expect(charts.map(({ title, kind, shares }) => [title, kind, shares])).toEqual([
    ["Share lame by month", "line", true],
    ["New cases by month", "bars", false],
    ["What made them lame", "bars", true],
    ["Still lame, days after treatment", "line", true],
  ]);
});

it("counts a chart that stands otherwise among those that are not drawn", () => {
  const files = unzipSync(bytes);
  for (const [name, part] of Object.entries(files))
    if (/drawings\/drawing\d+\.xml$/.test(name))
      files[name] = strToU8(strFromU8(part).replaceAll("twoCellAnchor", "oneCellAnchor"));
  const workbook = openWorkbook(zipSync(files));
  expect(readCharts(workbook, place(workbook))).toEqual({ charts: [], others: 4 });
});
