import type uPlot from "uplot";
import type { Line, Picture } from "./pictureOf.ts";

/** How much of the room of a name its bars take. */
const barShare = 0.7;

const standsAlone = ({ mark, standsOn, unseen }: Line): boolean =>
  mark === "bars" && standsOn === undefined && unseen !== true;

/** The series whose bars stand side by side over each name. */
const besides = ({ lines }: Picture): readonly Line[] =>
  lines.some(({ standsOn }) => standsOn !== undefined) ? [] : lines.filter(standsAlone);

/** How wide a bar is, as a share of the room of a name. */
export const barWidth = (picture: Picture): number => barShare / Math.max(1, besides(picture).length);

/** What the drawing library is given: the places across, and the figures of each line at each of them. */
export function plotData(picture: Picture): uPlot.AlignedData {
  const { across, lines } = picture;
  const bars = besides(picture);
  if (bars.length < 2) return [across, ...lines.map(({ values }) => values)] as unknown as uPlot.AlignedData;
  // A place for each bar beside the name's own; undefined is no figure at a place, and no gap in a line either.
  const offsets = [...new Set([0, ...bars.map((_, index) => offset(index, bars.length))])].sort((a, b) => a - b);
  const places = across.flatMap((at) => offsets.map((by) => at + by));
  const spread = ({ values }: Line, by: number) =>
    across.flatMap((_, index) => offsets.map((known) => (known === by ? (values[index] ?? null) : undefined)));
  return [
    places,
    ...lines.map((line) => spread(line, standsAlone(line) ? offset(bars.indexOf(line), bars.length) : 0)),
  ] as unknown as uPlot.AlignedData;
}

const offset = (index: number, of: number): number => ((index - (of - 1) / 2) * barShare) / of;
