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
type Stroke = Pick<ChartSeries, "Line" | "Marker" | "Fill">;
type Dash = NonNullable<NonNullable<ChartSeries["Line"]>["Dash"]>;

const { LineDashSolid, LineDashDash, LineDashSysDot } = chartKinds;
const stroke = (color: string, Dash: Dash, Width: number, Marker: Stroke["Marker"] = { Symbol: "none" }) =>
  ({ Fill: solid(color), Line: { Type: chartKinds.LineSolid, Dash, Width }, Marker }) satisfies Stroke;
const circle = { Symbol: "circle", Size: 6, Fill: solid(green), Border: { Type: chartKinds.LineNone } };

/** Lines of a chart, told apart by their strokes and not by colour alone; the library takes a line's colour from its fill. */
export const strokes = {
  main: stroke(green, LineDashSolid, 2.25, circle),
  curve: stroke(green, LineDashSolid, 2.25),
  thin: stroke(grey, LineDashSolid, 1),
  dashed: stroke(grey, LineDashDash, 1),
  dotted: stroke(ink, LineDashSysDot, 1.75),
} as const;

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
