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
export function chartPicture(chart: BookChart, cells: ChartCells): Picture {
  if (chart.scattered) return scatteredPicture(chart, cells);
  const { texts, values } = cells;
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

function scatteredPicture({ title, shares, acrossName, series }: BookChart, { texts, values }: ChartCells): Picture {
  const given = series.map((one) => {
    const places = values(one.across);
    return values(one.values).flatMap((value, index) => {
      const place = places[index];
      return typeof place === "number" && typeof value === "number" ? [{ place, value }] : [];
    });
  });
  const joint = jointPlaces(given.map((points) => points.map(({ place }) => place)));
  const lines = series.map((one, index): Line => {
    const left = new Map<number, number[]>();
    for (const { place, value } of given[index] ?? []) left.set(place, [...(left.get(place) ?? []), value]);
    return {
      name: texts(one.name)[0] ?? "",
      values: joint.map((place) => left.get(place)?.shift() ?? null),
      mark: markOf(one),
      tone: index === 0 ? "main" : (tones[(index - 1) % tones.length] ?? "quiet"),
      colour: one.colour,
      unseen: one.unseen && markOf(one) !== "points",
      points: one.points,
    };
  });
  const figures = (given[0] ?? []).map(({ value }) => value);
  const least = pictureWords.figure(Math.min(...figures), shares);
  const most = pictureWords.figure(Math.max(...figures), shares);
  return {
    title,
    said:
      figures.length === 0
        ? pictureWords.noFigures
        : pictureWords.pointsSaid(lines[0]?.name ?? "", figures.length, least, most),
    unit: shares ? "share" : "number",
    across: joint,
    labels: undefined,
    acrossName: acrossName === "" ? undefined : acrossName,
    lines,
    isScattered: true,
    // Each series has a figure at its own places alone.
    spansGaps: true,
  };
}

/** Every place at which a series has a figure, as often as the series has that has it most often, in order. */
function jointPlaces(series: readonly (readonly number[])[]): readonly number[] {
  const most = new Map<number, number>();
  for (const places of series) {
    const count = new Map<number, number>();
    for (const place of places) count.set(place, (count.get(place) ?? 0) + 1);
    for (const [place, times] of count) most.set(place, Math.max(times, most.get(place) ?? 0));
  }
  return [...most].sort(([one], [other]) => one - other).flatMap(([place, times]) => Array<number>(times).fill(place));
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
