import type { Chart, ChartSeries } from "excelize-wasm";
import { chartKinds } from "../writing/chartKinds.ts";
import { barFill, chartLook, chartTitle, drawnFrom, notInLegend, strokes } from "../writing/chartLook.ts";
import type { PlacedGrid } from "../writing/placeGrid.ts";
import type { limitNames, PlacedComparison } from "./placedComparison.ts";

const share = { NumFmt: { CustomNumFmt: "0%", SourceLinked: false }, Minimum: 0 };
const pale = { Type: "pattern", Pattern: 1, Color: ["C9D8D0"] };
const none = { Type: "pattern", Pattern: 0, Color: [] };
const axisTitle = (Text: string) => ({ Paragraph: [{ Text, Font: { Family: "Calibri", Size: 9 } }] });

/** Share against sheep looked at, with the limits of chance for each size. */
export function funnelChart({ comparison, funnel, limits, rows }: PlacedComparison): Chart {
  const limit = (name: (typeof limitNames)[number], stroke: "dashed" | "dotted"): ChartSeries => ({
    ...drawnFrom(limits, "seen", name),
    ...strokes[stroke],
  });
  return {
    ...chartLook,
    Type: chartKinds.Scatter,
    Dimension: { Width: 900, Height: 420 },
    Title: chartTitle("Funnel: share lame against sheep looked at"),
    XAxis: {
      ...chartLook.XAxis,
      NumFmt: { CustomNumFmt: "0", SourceLinked: false },
      Minimum: 0,
      Title: axisTitle("sheep looked at"),
    },
    YAxis: { ...chartLook.YAxis, ...share, Title: axisTitle("share lame") },
    Series: [
      {
        // There while the list is empty, too.
        Name: comparison.heading("share"),
        Categories: funnel.range("seen", rows),
        Values: funnel.range("share", rows),
        ...strokes.main,
        Line: { Type: chartKinds.LineNone },
      },
      limit("low 95 %", "dashed"),
      limit("high 95 %", "dashed"),
      limit("low 99.8 %", "dotted"),
      limit("high 99.8 %", "dotted"),
      { ...drawnFrom(limits, "seen", "target"), ...strokes.thin },
    ],
  };
}

/** What a chart of flocks by letters is drawn from. */
type LetteredKey = "letter" | "low" | "ownRange" | "otherRange" | "steadied" | "target";

/** The ranges in order of the steadied share, and the share itself over them; the pair of charts is drawn as one. */
export function rankedChart({ ranked }: PlacedComparison, title: string): readonly [Chart, Chart] {
  return overRanges(ranked, "name", [{ ...drawnFrom(ranked, "name", "range"), Fill: pale }], {
    title,
    size: { Width: 900, Height: 420 },
  });
}

/** The same for one flock among others that go by letters; its own range is drawn dark. */
export function letteredChart(ranked: PlacedGrid<LetteredKey>, title: string): readonly [Chart, Chart] {
  const ranges = [
    { ...drawnFrom(ranked, "letter", "ownRange"), Fill: barFill },
    { ...drawnFrom(ranked, "letter", "otherRange"), Fill: pale },
  ];
  return overRanges(ranked, "letter", ranges, { title, size: { Width: 872, Height: 330 } });
}

function overRanges<K extends string>(
  ranked: PlacedGrid<K | "low" | "steadied" | "target">,
  along: K,
  ranges: readonly ChartSeries[],
  { title, size }: { readonly title: string; readonly size: NonNullable<Chart["Dimension"]> },
): readonly [Chart, Chart] {
  const named = (key: "low" | "steadied" | "target"): ChartSeries => drawnFrom(ranked, along, key);
  const bars: Chart = {
    ...chartLook,
    Type: chartKinds.ColStacked,
    Dimension: size,
    Title: chartTitle(title),
    YAxis: { ...chartLook.YAxis, ...share },
    XAxis: { ...chartLook.XAxis, TickLabelSkip: 1, Alignment: { TextRotation: -90 } },
    GapWidth: 30,
    Overlap: 100,
    Series: [{ ...named("low"), Fill: none, Legend: notInLegend }, ...ranges],
  };
  // The axes are those of the chart drawn last.
  const lines: Chart = {
    ...chartLook,
    Type: chartKinds.Line,
    XAxis: bars.XAxis ?? {},
    YAxis: bars.YAxis ?? {},
    Series: [
      { ...named("steadied"), ...strokes.main, Line: { Type: chartKinds.LineNone } },
      { ...named("target"), ...strokes.dotted },
    ],
  };
  return [bars, lines];
}
