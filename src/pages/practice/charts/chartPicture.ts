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
export function chartPicture(chart: BookChart, { texts, values }: ChartCells): Picture {
  const { title, shares, series, lying, fromTop, stacked, spansGaps } = chart;
  const labels = texts(series[0]?.across ?? "");
  const lines: Line[] = [];
  // What the bars so far come to, at each place.
  let below: readonly number[] = [];
  let standsOn: number | undefined;
  series.forEach((one, index) => {
    const figures = values(one.values).map((cell) => (typeof cell === "number" ? cell : null));
    const isStacked = stacked && one.kind === "bars";
    if (isStacked) below = figures.map((value, place) => (value ?? 0) + (below[place] ?? 0));
    lines.push({
      name: texts(one.name)[0] ?? "",
      values: isStacked ? below : figures,
      mark: markOf(one),
      tone: index === 0 ? "main" : (tones[(index - 1) % tones.length] ?? "quiet"),
      colour: one.colour,
      unseen: one.unseen && markOf(one) !== "points",
      points: one.points,
      ...(isStacked && standsOn !== undefined ? { standsOn } : {}),
    });
    if (isStacked) standsOn = index;
  });
  const places = Math.max(0, ...lines.map((line) => line.values.length));
  return {
    title,
    said: stacked ? saidOfStack(lines, labels) : said(lines[0], labels, shares),
    unit: shares ? "share" : "number",
    across: Array.from({ length: places }, (_, index) => index),
    labels: (index) => labels[index] ?? "",
    acrossName: undefined,
    lines,
    lying: lying ? (fromTop ? "from the top" : "from below") : undefined,
    spansGaps,
  };
}

/** Of the series after the first, where the file has no colours for them. */
const tones = ["quiet", "alarm", "blue", "plum"] as const;

function markOf({ kind, dash, unseen, points }: ChartSeries): Line["mark"] {
  if (kind === "bars") return "bars";
  if (unseen && points) return "points";
  return dash === "solid" ? "line" : dash;
}

function saidOfStack(lines: readonly Line[], labels: readonly string[]): string {
  const names = lines.filter(({ unseen, name }) => !unseen && name !== "").map(({ name }) => name);
  const shown = labels.filter((label) => label !== "");
  return pictureWords.stackSaid(names, shown.length, shown[0] ?? "", shown.at(-1) ?? "");
}

function said(line: Line | undefined, labels: readonly string[], shares: boolean): string {
  const filled = (line?.values ?? []).flatMap((value, index) => (value === null ? [] : [{ value, place: index }]));
  if (!line || filled.length === 0) return pictureWords.noFigures;
  const inWords = ({ value, place }: { value: number; place: number }): string =>
    `${labels[place] ?? ""} ${pictureWords.figure(value, shares)}`.trim();
  const most = filled.reduce((high, one) => (one.value > high.value ? one : high));
  const [first, last] = [filled[0], filled.at(-1)] as [(typeof filled)[0], (typeof filled)[0]];
  return pictureWords.chartSaid(line.name, inWords(first), inWords(last), inWords(most));
}
