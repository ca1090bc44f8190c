import type { Chart, ChartSeries } from "excelize-wasm";
import { chartKinds } from "../authoring/chartKinds.ts";
import { barFill, chartLook, chartTitle, strokes } from "../authoring/chartLook.ts";

/** The cells each line and column is drawn from. */
export type DrawnRange = Readonly<
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
    string
  >
>;

const size = { Width: 610, Height: 278 };
const share = { NumFmt: { CustomNumFmt: "0%", SourceLinked: false }, Minimum: 0 };

/** The share lame month by month between its limits. */
export const lameChart = ({ month, share: lame, usual, low, high, target }: DrawnRange): Chart => ({
  ...chartLook,
  Type: chartKinds.Line,
  Dimension: size,
  Title: chartTitle("Share lame by month"),
  YAxis: { ...chartLook.YAxis, ...share },
  Series: [
    line("share lame", month, lame, "main"),
    line("usual", month, usual, "thin"),
    line("low limit", month, low, "dashed"),
    line("high limit", month, high, "dashed"),
    line("target", month, target, "dotted"),
  ],
});

/** New cases in each month. */
export const newCaseChart = ({ month, newCases }: DrawnRange): Chart => ({
  ...chartLook,
  Type: chartKinds.Col,
  Dimension: size,
  Title: chartTitle("New cases by month"),
  Legend: { Position: "none" },
  YAxis: { ...chartLook.YAxis, Minimum: 0 },
  GapWidth: 60,
  Series: [bar("new cases", month, newCases)],
});

/** What made them lame, most frequent first. */
export const lesionChart = ({ lesion, lesionShare }: DrawnRange): Chart => ({
  ...chartLook,
  Type: chartKinds.Bar,
  Dimension: size,
  Title: chartTitle("What made them lame"),
  Legend: { Position: "none" },
  XAxis: { ...chartLook.XAxis, ReverseOrder: true },
  YAxis: { ...chartLook.YAxis, ...share },
  GapWidth: 40,
  Series: [bar("share of cases", lesion, lesionShare)],
});

/** The share still lame, day by day after treatment. */
export const cureChart = ({ day, stillLame, stillLow, stillHigh }: DrawnRange): Chart => ({
  ...chartLook,
  Type: chartKinds.Line,
  Dimension: size,
  Title: chartTitle("Still lame, days after treatment"),
  XAxis: { ...chartLook.XAxis, TickLabelSkip: 7 },
  YAxis: { ...chartLook.YAxis, ...share, Maximum: 1 },
  Series: [
    line("still lame", day, stillLame, "curve"),
    line("low", day, stillLow, "dashed"),
    line("high", day, stillHigh, "dashed"),
  ],
});

const line = (Name: string, Categories: string, Values: string, kind: keyof typeof strokes): ChartSeries => ({
  Name,
  Categories,
  Values,
  ...strokes[kind],
});

const bar = (Name: string, Categories: string, Values: string): ChartSeries => ({
  Name,
  Categories,
  Values,
  Fill: barFill,
});
