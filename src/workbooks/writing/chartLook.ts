import type { Chart, ChartSeries, ChartTitle, Font } from "excelize-wasm";
import { chartKinds } from "./chartKinds.ts";
import { green, grey, ink } from "./looks.ts";
import type { PlacedGrid } from "./placeGrid.ts";

const font: Font = { Family: "Calibri", Size: 9, Color: ink };

/** What all charts share. */
export const chartLook = {
  VaryColors: false,
  // Asked for a gap, LibreOffice draws what is not known as 0.
  ShowBlanksAs: "span",
  Legend: { Position: "bottom", Font: font },
  XAxis: { Font: font, TickLabelPosition: chartKinds.ChartTickLabelLow },
  YAxis: { Font: font, MajorGridLines: true },
  Border: { Type: chartKinds.LineSolid, Fill: { Type: "pattern", Pattern: 1, Color: ["C9CFCB"] }, Width: 0.75 },
} as const satisfies Partial<Chart>;

export const chartTitle = (Text: string): ChartTitle => ({
  Paragraph: [{ Text, Font: { Family: "Calibri", Bold: true, Size: 12, Color: green } }],
});

const solid = (color: string) => ({ Type: "pattern", Pattern: 1, Color: [color] });
const bare = { Symbol: "none" };

/** Lines of a chart, told apart by their strokes and not by colour alone; the library takes a line's colour from its fill. */
export const strokes = {
  main: {
    Fill: solid(green),
    Line: { Type: chartKinds.LineSolid, Dash: chartKinds.LineDashSolid, Width: 2.25 },
    Marker: { Symbol: "circle", Size: 6, Fill: solid(green), Border: { Type: chartKinds.LineNone } },
  },
  curve: {
    Fill: solid(green),
    Line: { Type: chartKinds.LineSolid, Dash: chartKinds.LineDashSolid, Width: 2.25 },
    Marker: bare,
  },
  thin: {
    Fill: solid(grey),
    Line: { Type: chartKinds.LineSolid, Dash: chartKinds.LineDashSolid, Width: 1 },
    Marker: bare,
  },
  dashed: {
    Fill: solid(grey),
    Line: { Type: chartKinds.LineSolid, Dash: chartKinds.LineDashDash, Width: 1 },
    Marker: bare,
  },
  dotted: {
    Fill: solid(ink),
    Line: { Type: chartKinds.LineSolid, Dash: chartKinds.LineDashSysDot, Width: 1.75 },
    Marker: bare,
  },
} as const satisfies Record<string, Pick<ChartSeries, "Line" | "Marker" | "Fill">>;

/** For a series that is drawn but not named: `authorWorkbook` leaves out of the legend what has a font of its own there. */
export const notInLegend = { Font: { Size: 1 } } as const satisfies ChartSeries["Legend"];

/** Columns and bars. */
export const barFill = solid(green);

/** A line or column of a chart: a column of a grid along another, named by its heading. */
export const drawnFrom = <K extends string>(
  grid: PlacedGrid<K>,
  along: NoInfer<K>,
  shown: NoInfer<K>,
): ChartSeries => ({
  Name: grid.heading(shown),
  Categories: grid.range(along),
  Values: grid.range(shown),
});
