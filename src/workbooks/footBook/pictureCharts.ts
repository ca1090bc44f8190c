import type { Chart } from "excelize-wasm";
import { chartKinds } from "../writing/chartKinds.ts";
import { barFill, chartLook, chartTitle, drawnFrom, strokes } from "../writing/chartLook.ts";
import { drawn } from "./pictureFigures.ts";

const size = { Width: 600, Height: 338 };
const share = { NumFmt: { CustomNumFmt: "0%", SourceLinked: false }, Minimum: 0 };
/** While there are few cases, an axis is divided by tenths of a case. */
const counted = { NumFmt: { CustomNumFmt: '[=0]0;[<1]"";General', SourceLinked: false }, Minimum: 0 };
const { months, lesions, days } = drawn;

/** The share lame month by month between its limits. */
export const lameChart: Chart = {
  ...chartLook,
  Type: chartKinds.Line,
  Dimension: size,
  Title: chartTitle("Share lame by month"),
  YAxis: { ...chartLook.YAxis, ...share },
  Series: [
    { ...drawnFrom(months, "label", "share"), ...strokes.main },
    { ...drawnFrom(months, "label", "usual"), ...strokes.thin },
    { ...drawnFrom(months, "label", "low"), ...strokes.dashed },
    { ...drawnFrom(months, "label", "high"), ...strokes.dashed },
    { ...drawnFrom(months, "label", "target"), ...strokes.dotted },
  ],
};

/** New cases in each month. */
export const newCaseChart: Chart = {
  ...chartLook,
  Type: chartKinds.Col,
  Dimension: size,
  Title: chartTitle("New cases by month"),
  Legend: { Position: "none" },
  YAxis: { ...chartLook.YAxis, ...counted },
  GapWidth: 60,
  Series: [{ ...drawnFrom(months, "label", "newCases"), Fill: barFill }],
};

/** What made them lame, most frequent first. */
export const lesionChart: Chart = {
  ...chartLook,
  Type: chartKinds.Bar,
  Dimension: size,
  Title: chartTitle("What made them lame"),
  Legend: { Position: "none" },
  XAxis: { ...chartLook.XAxis, ReverseOrder: true },
  YAxis: { ...chartLook.YAxis, ...share, Maximum: 1 },
  GapWidth: 40,
  Series: [{ ...drawnFrom(lesions, "lesion", "share"), Fill: barFill }],
};

/** The share still lame, day by day after treatment. */
export const cureChart: Chart = {
  ...chartLook,
  Type: chartKinds.Line,
  Dimension: size,
  Title: chartTitle("Still lame, days after treatment"),
  XAxis: { ...chartLook.XAxis, TickLabelSkip: 7, Alignment: { TextRotation: 1 } },
  YAxis: { ...chartLook.YAxis, ...share, Maximum: 1 },
  Series: [
    { ...drawnFrom(days, "label", "stillLame"), ...strokes.curve },
    { ...drawnFrom(days, "label", "low"), ...strokes.dashed },
    { ...drawnFrom(days, "label", "high"), ...strokes.dashed },
  ],
};
