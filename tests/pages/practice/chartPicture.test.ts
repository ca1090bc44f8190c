import { expect, it } from "vitest";
import type { Cell } from "../../../src/cells/cell.ts";
import { chartPicture } from "../../../src/pages/practice/charts/chartPicture.ts";
import type { BookChart, ChartSeries } from "../../../src/pages/practice/charts/readCharts.ts";
import { plotData } from "../../../src/pages/practice/pictures/plotData.ts";

const corner = { row: 0, column: 0, right: 0, down: 0 };
const series = (values: string, more: Partial<ChartSeries> = {}): ChartSeries => ({
  kind: "bars",
  name: `${values} name`,
  across: "names",
  values,
  dash: "solid",
  colour: undefined,
  unseen: false,
  points: false,
  ...more,
});
const chart = (all: readonly ChartSeries[], more: Partial<BookChart> = {}): BookChart => ({
  from: corner,
  to: corner,
  title: "Cases",
  scattered: false,
  acrossName: "",
  lying: false,
  fromTop: false,
  stacked: false,
  spansGaps: false,
  shares: false,
  series: all,
  ...more,
});
const cells: Readonly<Record<string, readonly Cell[]>> = { low: [1, 2], range: [3, null], mark: [2, 2] };
const book = {
  texts: (reference: string) => (reference === "names" ? ["Jan", "Feb"] : [reference.replace(" name", "")]),
  values: (reference: string) => cells[reference] ?? [],
};

it("stacks bars on those before, unseen ones too, and leaves lines where they are", () => {
  const picture = chartPicture(
    chart([series("low", { unseen: true }), series("range"), series("mark", { kind: "line" })], { stacked: true }),
    book,
  );
  expect(picture.lines.map(({ values, standsOn }) => [values, standsOn])).toEqual([
    [[1, 2], undefined],
    [[4, 2], 0],
    [[2, 2], undefined],
  ]);
  expect(picture.said).toBe("range, mark: bars over 2 names, from Jan to Feb.");
  expect(plotData(picture)[0]).toEqual([0, 1]);
});

it("puts the bars of several series side by side over each name", () => {
  const picture = chartPicture(chart([series("low"), series("mark")]), book);
  const [places, low, mark] = plotData(picture);
  expect(places?.map((place) => Math.round(place * 1000) / 1000)).toEqual([-0.175, 0, 0.175, 0.825, 1, 1.175]);
  expect(low).toEqual([1, undefined, undefined, 2, undefined, undefined]);
  expect(mark).toEqual([undefined, undefined, 2, undefined, undefined, 2]);
});

it("lets bars lie as the file has them, the first name on top or at the bottom", () => {
  expect(chartPicture(chart([series("low")], { lying: true }), book).lying).toBe("from below");
  expect(chartPicture(chart([series("low")], { lying: true, fromTop: true }), book).lying).toBe("from the top");
  expect(chartPicture(chart([series("low")]), book).lying).toBeUndefined();
});

it("puts the points of each series at places of their own, two at one place too", () => {
  const given: Readonly<Record<string, readonly Cell[]>> = {
    seen: [40, 20, 40],
    share: [3, 1, 5],
    at: [20, 50],
    limit: [8, 9],
  };
  const points = series("share", { kind: "line", across: "seen", unseen: true, points: true });
  const limit = series("limit", { kind: "line", across: "at", dash: "dashed" });
  const picture = chartPicture(chart([points, limit], { scattered: true, acrossName: "sheep seen" }), {
    ...book,
    values: (reference) => given[reference] ?? [],
  });
  expect(picture.across).toEqual([20, 40, 40, 50]);
  expect(picture.lines.map(({ values, mark }) => [values, mark])).toEqual([
    [[1, 3, 5, null], "points"],
    [[8, null, null, 9], "dashed"],
  ]);
  expect(picture.said).toBe("share: 3 points, from 1 to 5.");
});
