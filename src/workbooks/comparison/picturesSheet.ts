import type { SheetPlan } from "../writing/authorWorkbook.ts";
import { funnelChart, rankedChart } from "./comparisonCharts.ts";
import { type PlacedComparison, sheetNames } from "./placedComparison.ts";

const second = 27;

/** The funnel, and the flocks in order. */
export const picturesSheet = (placed: PlacedComparison): SheetPlan => ({
  name: sheetNames.pictures,
  write(sheet) {
    sheet.title("Pictures");
    sheet.put(
      { row: 1, column: 0 },
      "A point outside the dashed lines lies where one flock in twenty would, among flocks that differ as much as these; outside the dotted lines hardly one.",
      "note",
    );
    sheet.chart({ row: 3, column: 0 }, funnelChart(placed));
    sheet.put(
      { row: second - 1, column: 0 },
      "Bars that overlap: the order between those flocks is not settled.",
      "note",
    );
    sheet.chart({ row: second, column: 0 }, ...rankedChart(placed, "Steadied share lame with its range, lowest first"));
    sheet.protect();
    sheet.print({ upTo: { row: second + 22, column: 14 }, onOnePage: true });
  },
});
