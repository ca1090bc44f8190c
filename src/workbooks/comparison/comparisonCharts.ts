import type { Chart, ChartSeries } from "excelize-wasm";
import { funnelFunction } from "../../../functions/benchmarking/funnel.ts";
import { columnLetters } from "../../workbook/address.ts";
import { chartKinds } from "../writing/chartKinds.ts";
import { barFill, chartLook, chartTitle, notInLegend, strokes } from "../writing/chartLook.ts";
import { sheetNames } from "./comparisonTables.ts";
import {
  figuresHeading,
  funnelColumn,
  gridSizes,
  listColumn,
  parts,
  rankedColumn,
  rankedColumns,
} from "./figuresPlaces.ts";

const share = { NumFmt: { CustomNumFmt: "0%", SourceLinked: false }, Minimum: 0 };
const pale = { Type: "pattern", Pattern: 1, Color: ["C9D8D0"] };
const none = { Type: "pattern", Pattern: 0, Color: [] };
const axisTitle = (Text: string) => ({ Paragraph: [{ Text, Font: { Family: "Calibri", Size: 9 } }] });

const heading = (column: number): string => `${sheetNames.figures}!$${columnLetters(column)}$${figuresHeading + 1}`;

/** Share against sheep looked at, with the limits of chance for each size. */
export function funnelChart(rows: number): Chart {
  const sizes = listColumn(funnelFunction, parts.limits, "seen", gridSizes);
  const limit = (name: string, stroke: "dashed" | "dotted"): ChartSeries => ({
    Name: heading(parts.limits + funnelFunction.result.headings.indexOf(name)),
    Categories: sizes,
    Values: listColumn(funnelFunction, parts.limits, name, gridSizes),
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
        Name: heading(parts.funnel + 2),
        Categories: funnelColumn("seen", rows),
        Values: funnelColumn("share", rows),
        ...strokes.main,
        Line: { Type: chartKinds.LineNone },
      },
      limit("low 95 %", "dashed"),
      limit("high 95 %", "dashed"),
      limit("low 99.8 %", "dotted"),
      limit("high 99.8 %", "dotted"),
    ],
  };
}

const named = (name: (typeof rankedColumns)[number], along: "name" | "letter", rows: number): ChartSeries => ({
  Name: heading(parts.ranked + rankedColumns.indexOf(name)),
  Categories: rankedColumn(along, rows),
  Values: rankedColumn(name, rows),
});

/** The ranges in order of the steadied share, and the share itself over them; the pair of charts is drawn as one. */
export function rankedChart(along: "name" | "letter", rows: number, title: string): readonly [Chart, Chart] {
  const ranges: ChartSeries[] =
    along === "name"
      ? [{ ...named("range", along, rows), Fill: pale }]
      : [
          { ...named("range of this flock", along, rows), Fill: barFill },
          { ...named("range of the others", along, rows), Fill: pale },
        ];
  const bars: Chart = {
    ...chartLook,
    Type: chartKinds.ColStacked,
    Dimension: { Width: along === "name" ? 900 : 872, Height: along === "name" ? 420 : 330 },
    Title: chartTitle(title),
    YAxis: { ...chartLook.YAxis, ...share },
    XAxis: { ...chartLook.XAxis, TickLabelSkip: 1, Alignment: { TextRotation: -90 } },
    GapWidth: 30,
    Overlap: 100,
    Series: [{ ...named("low", along, rows), Fill: none, Legend: notInLegend }, ...ranges],
  };
  // The axes are those of the chart drawn last.
  const lines: Chart = {
    ...chartLook,
    Type: chartKinds.Line,
    XAxis: bars.XAxis ?? {},
    YAxis: bars.YAxis ?? {},
    Series: [
      { ...named("steadied share", along, rows), ...strokes.main, Line: { Type: chartKinds.LineNone } },
      { ...named("target", along, rows), ...strokes.dotted },
    ],
  };
  return [bars, lines];
}
