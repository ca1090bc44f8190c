import { useEffect, useRef } from "preact/hooks";
import uPlot from "uplot";
import type { Line, Picture } from "./pictureOf.ts";

interface Props {
  readonly picture: Picture;
  readonly dark: boolean;
  /** In pixels; it is as wide as what it stands in. */
  readonly height: number;
}

/** What is drawn of a picture. Whoever shows it says the same in words. */
export function Plot({ picture, dark, height }: Props) {
  const place = useRef<HTMLDivElement>(null);
  // biome-ignore lint/correctness/useExhaustiveDependencies: the colours are read anew when light turns to dark
  useEffect(() => {
    const holder = place.current;
    if (!holder) return undefined;
    const data = [picture.across, ...picture.lines.map(({ values }) => values)] as unknown as uPlot.AlignedData;
    const plot = new uPlot(optionsOf(picture, holder, height), data, holder);
    const watch = new ResizeObserver(() => plot.setSize({ width: holder.clientWidth, height }));
    watch.observe(holder);
    return () => {
      watch.disconnect();
      plot.destroy();
    };
  }, [picture, dark, height]);
  return <div class="plot" ref={place} aria-hidden="true" />;
}

export const Legend = ({ picture }: Pick<Props, "picture">) => (
  <ul class="legend" aria-hidden="true">
    {legendOf(picture).map(({ name, mark, tone }) => (
      <li key={name} class={`${mark} ${tone}`}>
        {name}
      </li>
    ))}
  </ul>
);

const bars = uPlot.paths.bars?.({ size: [0.7] }) ?? (() => null);

/** Both limits of a pair carry one name and are told once. */
const legendOf = ({ lines }: Picture): readonly Line[] =>
  lines.filter(({ name }, index) => lines.findIndex((line) => line.name === name) === index);

function optionsOf(
  { across, labels, lines, acrossName, unit }: Picture,
  holder: HTMLElement,
  height: number,
): uPlot.Options {
  const colour = (name: string): string => getComputedStyle(holder).getPropertyValue(name).trim();
  const tones = { main: colour("--leaf"), quiet: colour("--quiet"), alarm: colour("--caution-edge") };
  const axis = {
    stroke: colour("--ink"),
    grid: { stroke: colour("--line"), width: 1 },
    ticks: { stroke: colour("--line") },
  };
  const isBars = lines.some(({ mark }) => mark === "bars");
  const ends = [across[0] ?? 0, across.at(-1) ?? 1] as const;
  return {
    width: holder.clientWidth,
    height,
    legend: { show: false },
    cursor: { show: false },
    // The last slanting name under the bars runs on to the right.
    padding: [null, isBars ? 56 : null, null, null],
    scales: {
      x: {
        time: false,
        range: isBars ? [-0.6, across.length - 0.4] : [ends[0], ends[1] === ends[0] ? ends[0] + 1 : ends[1]],
      },
      y: { range: (_, __, most) => [0, Math.max(unit === "share" ? 0.01 : 1, most * 1.05)] },
    },
    axes: [
      {
        ...axis,
        ...(acrossName === undefined ? {} : { label: acrossName, labelSize: 20 }),
        ...(labels
          ? {
              values: (_, places) =>
                places.map((index) => (isBars && !Number.isInteger(index) ? "" : shorten(labels(index)))),
              rotate: isBars ? -40 : 0,
              size: isBars ? 90 : 40,
              space: isBars ? 20 : 90,
            }
          : {}),
      },
      {
        ...axis,
        values: (_, at) => at.map((value) => (unit === "share" ? `${Math.round(value * 1000) / 10} %` : String(value))),
        size: 60,
      },
    ],
    series: [
      {},
      ...lines.map(({ name, mark, tone }): uPlot.Series => {
        const stroke = tones[tone];
        const common = { label: name, stroke, width: tone === "main" ? 2 : 1.25, spanGaps: true };
        if (mark === "bars")
          return {
            ...common,
            fill: stroke,
            paths: bars,
            points: { show: false },
          };
        if (mark === "points") return { ...common, paths: () => null, points: { show: true, size: 8, fill: stroke } };
        return { ...common, points: { show: false }, ...(mark === "dashed" ? { dash: [5, 4] } : {}) };
      }),
    ],
  };
}

// Room under a bar is short; the figures below hold the whole name.
const shorten = (label: string): string => (label.length > 16 ? `${label.slice(0, 15)}…` : label);
