import type { Chart, ChartSeries } from "excelize-wasm";
import { chartKinds } from "../writing/chartKinds.ts";
import { barFill, chartLook, chartTitle, strokes } from "../writing/chartLook.ts";

/** The cells a line or a column is drawn from, and the cell that names it. */
export interface Drawn {
  readonly name: string;
  readonly cells: string;
}

/** What the charts are drawn from. */
export type DrawnRanges = Readonly<
  Record<
    | "month"
    | "share"
    | "usual"
    | "low"
    | "high"
    | "target"
    | "newCases"
    | "lesion"
    | "lesionShare"
    | "day"
    | "stillLame"
    | "stillLow"
    | "stillHigh",
    Drawn
  >
>;

const size = { Width: 600, Height: 338 };
const share = { NumFmt: { CustomNumFmt: "0%", SourceLinked: false }, Minimum: 0 };

/** The share lame month by month between its limits. */
export const lameChart = ({ month, share: lame, usual, low, high, target }: DrawnRanges): Chart => ({
  ...chartLook,
  Type: chartKinds.Line,
  Dimension: size,
  Title: chartTitle("Share lame by month"),
  YAxis: { ...chartLook.YAxis, ...share },
  Series: [
    line(month, lame, "main"),
    line(month, usual, "thin"),
    line(month, low, "dashed"),
    line(month, high, "dashed"),
    line(month, target, "dotted"),
  ],
});

/** New cases in each month. */
export const newCaseChart = ({ month, newCases }: DrawnRanges): Chart => ({
  ...chartLook,
  Type: chartKinds.Col,
  Dimension: size,
  Title: chartTitle("New cases by month"),
  Legend: { Position: "none" },
  YAxis: { ...chartLook.YAxis, Minimum: 0 },
  GapWidth: 60,
  Series: [bar(month, newCases)],
});

/** What made them lame, most frequent first. */
export const lesionChart = ({ lesion, lesionShare }: DrawnRanges): Chart => ({
  ...chartLook,
  Type: chartKinds.Bar,
  Dimension: size,
  Title: chartTitle("What made them lame"),
  Legend: { Position: "none" },
  XAxis: { ...chartLook.XAxis, ReverseOrder: true },
  YAxis: { ...chartLook.YAxis, ...share },
  GapWidth: 40,
  Series: [bar(lesion, lesionShare)],
});

/** The share still lame, day by day after treatment. */
export const cureChart = ({ day, stillLame, stillLow, stillHigh }: DrawnRanges): Chart => ({
  ...chartLook,
  Type: chartKinds.Line,
  Dimension: size,
  Title: chartTitle("Still lame, days after treatment"),
  XAxis: { ...chartLook.XAxis, TickLabelSkip: 7, Alignment: { TextRotation: 1 } },
  YAxis: { ...chartLook.YAxis, ...share, Maximum: 1 },
  Series: [line(day, stillLame, "curve"), line(day, stillLow, "dashed"), line(day, stillHigh, "dashed")],
});

const line = (along: Drawn, { name, cells }: Drawn, kind: keyof typeof strokes): ChartSeries => ({
  Name: name,
  Categories: along.cells,
  Values: cells,
  ...strokes[kind],
});

const bar = (along: Drawn, { name, cells }: Drawn): ChartSeries => ({
  Name: name,
  Categories: along.cells,
  Values: cells,
  Fill: barFill,
});
