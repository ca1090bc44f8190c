import type { Chart, ChartSeries, ChartTitle, Font } from "excelize-wasm";
import { chartKinds } from "./chartKinds.ts";
import { green, grey, ink } from "./looks.ts";

const font: Font = { Family: "Calibri", Size: 9, Color: ink };

/** What all charts share. */
export const chartLook = {
  VaryColors: false,
  ShowBlanksAs: "gap",
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

/** Lines of a chart, told apart by their strokes and not by colour alone. */
export const strokes = {
  main: {
    Line: { Type: chartKinds.LineSolid, Dash: chartKinds.LineDashSolid, Fill: solid(green), Width: 2.25 },
    Marker: { Symbol: "circle", Size: 6, Fill: solid(green), Border: { Type: chartKinds.LineNone } },
  },
  curve: {
    Line: { Type: chartKinds.LineSolid, Dash: chartKinds.LineDashSolid, Fill: solid(green), Width: 2.25 },
    Marker: bare,
  },
  thin: {
    Line: { Type: chartKinds.LineSolid, Dash: chartKinds.LineDashSolid, Fill: solid(grey), Width: 1 },
    Marker: bare,
  },
  dashed: {
    Line: { Type: chartKinds.LineSolid, Dash: chartKinds.LineDashDash, Fill: solid(grey), Width: 1 },
    Marker: bare,
  },
  dotted: {
    Line: { Type: chartKinds.LineSolid, Dash: chartKinds.LineDashSysDot, Fill: solid(ink), Width: 1.75 },
    Marker: bare,
  },
} as const satisfies Record<string, Pick<ChartSeries, "Line" | "Marker">>;

/** Columns and bars. */
export const barFill = solid(green);
