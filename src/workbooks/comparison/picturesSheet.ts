import type { SheetPlan } from "../writing/authorWorkbook.ts";
import { funnelChart, rankedChart } from "./comparisonCharts.ts";
import type { ComparisonContent } from "./comparisonContent.ts";
import { roomFor, sheetNames } from "./comparisonTables.ts";

const second = 27;

/** The funnel, and the flocks in order. */
export const picturesSheet = ({ flocks }: ComparisonContent): SheetPlan => ({
  name: sheetNames.pictures,
  write(sheet) {
    const rows = roomFor(flocks.length);
    sheet.title("Pictures");
    sheet.put(
      { row: 1, column: 0 },
      "A point outside the dashed lines lies where one flock in twenty would by chance; outside the dotted lines hardly one.",
      "note",
    );
    sheet.chart({ row: 3, column: 0 }, funnelChart(rows));
    sheet.put(
      { row: second - 1, column: 0 },
      "Bars that overlap: the order between those flocks is not settled.",
      "note",
    );
    sheet.chart(
      { row: second, column: 0 },
      ...rankedChart("name", rows, "Steadied share lame with its range, lowest first"),
    );
    sheet.newPageAtRow(second - 2);
    sheet.protect();
    sheet.print({ sideways: true, cells: `$A$1:$O$${second + 23}` });
  },
});
