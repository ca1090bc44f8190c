import type { Cell } from "../../../cells/cell.ts";
import type { Line, Picture } from "../pictures/pictureOf.ts";
import { pictureWords } from "../pictures/pictureWords.ts";
import type { BookChart, ChartSeries } from "./readCharts.ts";

/** What stands in the cells that a chart names. */
export interface ChartCells {
  /** As they are shown. */
  readonly texts: (reference: string) => readonly string[];
  readonly values: (reference: string) => readonly Cell[];
}

/** A chart of a workbook as it is drawn, with the figures that its cells hold now, and the same said in words. */
export function chartPicture({ title, kind, shares, series }: BookChart, { texts, values }: ChartCells): Picture {
  const labels = texts(series[0]?.across ?? "");
  const figures = (reference: string): readonly (number | null)[] =>
    values(reference).map((cell) => (typeof cell === "number" ? cell : null));
  const lines = series.map(
    (one, index): Line => ({
      name: texts(one.name)[0] ?? "",
      values: figures(one.values),
      mark: markOf(kind, one),
      tone: index === 0 ? "main" : "quiet",
    }),
  );
  return {
    title,
    said: said(lines[0], labels, shares),
    unit: shares ? "share" : "number",
    across: (lines[0]?.values ?? []).map((_, index) => index),
    labels: (index) => labels[index] ?? "",
    acrossName: undefined,
    lines,
  };
}

const markOf = (kind: BookChart["kind"], { dashed }: ChartSeries): Line["mark"] =>
  kind === "bars" ? "bars" : dashed ? "dashed" : "line";

function said(line: Line | undefined, labels: readonly string[], shares: boolean): string {
  const filled = (line?.values ?? []).flatMap((value, index) => (value === null ? [] : [{ value, place: index }]));
  if (!line || filled.length === 0) return pictureWords.noFigures;
  const inWords = ({ value, place }: { value: number; place: number }): string =>
    `${labels[place] ?? ""} ${pictureWords.figure(value, shares)}`.trim();
  const most = filled.reduce((high, one) => (one.value > high.value ? one : high));
  const [first, last] = [filled[0], filled.at(-1)] as [(typeof filled)[0], (typeof filled)[0]];
  return pictureWords.chartSaid(line.name, inWords(first), inWords(last), inWords(most));
}
