import uPlot from "uplot";
import type { Line, Picture } from "./pictureOf.ts";
import { barWidth } from "./plotData.ts";

/** What a picture is drawn into. */
export interface Room {
  /** Its colours are read off here. */
  readonly holder: HTMLElement;
  readonly width: number;
  readonly height: number;
  readonly dark: boolean;
  /** So many times as large, to be made smaller again where it is shown: paper is finer than a screen. */
  readonly enlarged: number;
}

/** A picture in the words of the drawing library. */
export function plotOptions(picture: Picture, { holder, width, height, dark, enlarged: by }: Room): uPlot.Options {
  const { across, lines, unit, spansGaps = true } = picture;
  const colour = (name: string): string => getComputedStyle(holder).getPropertyValue(name).trim();
  const tones: Readonly<Record<Line["tone"], string>> = {
    main: colour("--leaf"),
    quiet: colour("--quiet"),
    alarm: colour("--caution-edge"),
    blue: colour("--blue"),
    plum: colour("--plum"),
  };
  const isBars = lines.some(({ mark }) => mark === "bars");
  const isLying = isBars && picture.lying !== undefined;
  const ends = [across[0] ?? 0, across.at(-1) ?? 1] as const;
  const beyond = picture.isScattered === true ? (ends[1] - ends[0]) * 0.03 : 0;
  return {
    width: width * by,
    height: height * by,
    legend: { show: false },
    cursor: { show: false },
    padding: [null, isBars && !isLying ? slanting(picture, width).right * by : 8 * by, null, null],
    scales: {
      x: {
        time: false,
        ori: isLying ? 1 : 0,
        dir: picture.lying === "from the top" ? -1 : 1,
        range: isBars
          ? [-0.6, across.length - 0.4]
          : [ends[0] - beyond, (ends[1] === ends[0] ? ends[0] + 1 : ends[1]) + beyond],
      },
      y: {
        ori: isLying ? 0 : 1,
        range: (_, least, most) => [Math.min(0, least * 1.05), Math.max(unit === "share" ? 0.01 : 1, most * 1.05)],
      },
    },
    axes: axesOf(picture, { width, height, by, isBars, isLying, colour }),
    series: [
      {},
      ...lines.map(({ name, mark, tone, ...line }, index): uPlot.Series => {
        const stroke = line.colour === undefined ? tones[tone] : dark ? turned(line.colour) : line.colour;
        const common = { label: name, stroke, width: (index === 0 ? 2 : 1.5) * by, spanGaps: spansGaps };
        const points = { show: line.points === true, size: 6 * by, fill: stroke };
        if (mark === "bars")
          return {
            ...common,
            fill: stroke,
            show: line.unseen !== true,
            paths: barPaths(picture, line.standsOn),
            points: { show: false },
          };
        if (mark === "points")
          return { ...common, paths: () => null, points: { show: true, size: 8 * by, fill: stroke } };
        const dash = dashes[mark]?.map((length) => length * by);
        return { ...common, show: line.unseen !== true, points, ...(dash ? { dash } : {}) };
      }),
    ],
  };
}

interface Axes {
  readonly width: number;
  readonly height: number;
  readonly by: number;
  readonly isBars: boolean;
  readonly isLying: boolean;
  readonly colour: (name: string) => string;
}

function axesOf(picture: Picture, { width, height, by, isBars, isLying, colour }: Axes): uPlot.Axis[] {
  const { across, labels, acrossName, unit } = picture;
  const axis: uPlot.Axis = {
    stroke: colour("--ink"),
    font: `${12 * by}px system-ui, sans-serif`,
    labelFont: `bold ${12 * by}px system-ui, sans-serif`,
    gap: 5 * by,
    grid: { stroke: colour("--line"), width: by },
    ticks: { stroke: colour("--line"), width: by, size: 10 * by },
  };
  const turn = slanting(picture, width);
  const named: Partial<uPlot.Axis> = labels
    ? {
        values: (_, places) =>
          places.map((at) =>
            isBars && !Number.isInteger(at) ? "" : shorten(labels(at), isLying ? besideBars(width) : 16),
          ),
        ...(across.every((at, index) => at === index)
          ? { splits: () => namedPlaces(picture, isLying ? height / 16 : width / (isBars ? 20 : 70)) }
          : {}),
        rotate: isBars && !isLying ? turn.angle : 0,
        size: (isLying ? longest(picture, besideBars(width)) + 24 : isBars ? turn.below : 40) * by,
        space: (isLying ? 14 : isBars ? 20 : 90) * by,
      }
    : {};
  const ofNames: uPlot.Axis = {
    ...axis,
    size: 40 * by,
    space: 60 * by,
    ...(acrossName === undefined ? {} : { label: acrossName, labelSize: 20 * by }),
    side: isLying ? 3 : 2,
    ...named,
  };
  const ofFigures: uPlot.Axis = {
    ...axis,
    side: isLying ? 2 : 3,
    values: (_, at) => at.map((value) => (unit === "share" ? `${Math.round(value * 1000) / 10} %` : String(value))),
    size: (isLying ? 40 : 60) * by,
    space: (isLying ? 60 : 30) * by,
  };
  return [ofNames, { ...ofFigures, scale: "y" }];
}

/** Places that have a name, or every second, third and so on of them where there is room for so many only. */
function namedPlaces({ across, labels }: Picture, most: number): number[] {
  const named = across.filter((at) => (labels?.(at) ?? "") !== "");
  const each = Math.max(1, Math.ceil(named.length / Math.max(1, most)));
  return named.filter((_, index) => index % each === 0);
}

// About as wide as a letter of the axes is, in pixels.
const letter = 6.6;

/** So many letters of a name go beside lying bars, which are to have more than half of the room. */
const besideBars = (width: number): number => Math.max(8, Math.floor((width * 0.45 - 24) / letter));

const longest = ({ across, labels }: Picture, most: number): number =>
  Math.max(0, ...across.map((at) => shorten(labels?.(at) ?? "", most).length)) * letter;

/** Names under bars slant where they are wider than a bar's room. */
function slanting(picture: Picture, width: number): { angle: number; below: number; right: number } {
  const long = longest(picture, 16);
  const fits = long + 6 <= (width - 80) / Math.max(1, picture.across.length);
  // cos 40° and sin 40°.
  return fits
    ? { angle: 0, below: 34, right: 8 }
    : { angle: -40, below: Math.min(90, 0.643 * long + 30), right: Math.max(8, 0.766 * long - 12) };
}

const dashes: Readonly<Partial<Record<Line["mark"], readonly number[]>>> = { dashed: [6, 4], dotted: [1.5, 3] };

function barPaths(picture: Picture, standsOn: number | undefined): uPlot.Series.PathBuilder {
  const figures = (plot: uPlot, series: number) => plot.data[series] as (number | null)[];
  const disp: uPlot.Series.BarsPathBuilderDisplay | undefined =
    standsOn === undefined
      ? undefined
      : {
          y0: { unit: 1, values: (plot) => figures(plot, standsOn + 1) },
          y1: { unit: 1, values: figures },
        };
  return uPlot.paths.bars?.({ size: [barWidth(picture)], ...(disp ? { disp } : {}) }) ?? (() => null);
}

// Room under a bar is short; the figures below hold the whole name.
const shorten = (label: string, most: number): string => (label.length > most ? `${label.slice(0, most - 1)}…` : label);

/** A colour for dark ground: as light as it was dark, of the same hue, and never so dark that it is not seen. */
export function turned(colour: string): string {
  const [red = 0, green = 0, blue = 0] = [1, 3, 5].map((at) => Number.parseInt(colour.slice(at, at + 2), 16));
  const [most, least] = [Math.max(red, green, blue), Math.min(red, green, blue)];
  const light = Math.max(255 - (most + least) / 2, darkest);
  const by = light - (most + least) / 2;
  const channels = [red, green, blue].map((channel) => Math.round(Math.min(255, Math.max(0, channel + by))));
  return `rgb(${channels.join(", ")})`;
}

// Of 255, between the lightest and the darkest of the three.
const darkest = 88;
