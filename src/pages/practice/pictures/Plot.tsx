import { useLayoutEffect, useRef } from "preact/hooks";
import uPlot from "uplot";
import type { Line, Picture } from "./pictureOf.ts";
import { plotData } from "./plotData.ts";
import { plotOptions, turned } from "./plotOptions.ts";

interface Props {
  readonly picture: Picture;
  readonly dark: boolean;
  /** In pixels; it is as wide as what it stands in. */
  readonly height: number;
  /** On paper, where what it stands in has no width yet. */
  readonly printed?: OnPaper | undefined;
}

interface OnPaper {
  readonly width: number;
  /** So many times as large as on the screen are letters and lines, since the sheet around is made smaller. */
  readonly letters: number;
}

// Paper takes some 300 dots an inch, and a pixel is a 96th of one.
const finer = 3;

/** What is drawn of a picture. Whoever shows it says the same in words. */
export function Plot({ picture, dark, height, printed }: Props) {
  const place = useRef<HTMLDivElement>(null);
  const { width, letters = 1 } = printed ?? {};
  // Before the next picture is painted, since what is printed is printed at once.
  useLayoutEffect(() => {
    const holder = place.current;
    if (!holder) return undefined;
    const room =
      width === undefined
        ? { holder, width: holder.clientWidth, height, dark, enlarged: 1 }
        : { holder, width: width / letters, height: height / letters, dark, enlarged: finer * letters };
    const plot = new uPlot(plotOptions(picture, room), plotData(picture), holder);
    if (width !== undefined) {
      plot.root.style.setProperty("zoom", String(1 / finer));
      // At once: otherwise it is drawn after this turn, which for Firefox is after the page was copied to be printed.
      plot.batch(() => {});
      return () => plot.destroy();
    }
    const watch = new ResizeObserver(() => plot.setSize({ width: holder.clientWidth, height }));
    watch.observe(holder);
    return () => {
      watch.disconnect();
      plot.destroy();
    };
  }, [picture, dark, height, width, letters]);
  return <div class="plot" ref={place} aria-hidden="true" />;
}

export const Legend = ({ picture, dark }: Pick<Props, "picture" | "dark">) => (
  <ul class="legend" aria-hidden="true">
    {legendOf(picture).map(({ name, mark, tone, colour }) => (
      <li
        key={name}
        class={`${mark} ${tone}`}
        style={colour === undefined ? {} : { "--mark": dark ? turned(colour) : colour }}
      >
        {name}
      </li>
    ))}
  </ul>
);

/** Both limits of a pair carry one name and are told once. */
const legendOf = ({ lines }: Picture): readonly Line[] =>
  lines.filter(({ name, unseen }, index) => unseen !== true && lines.findIndex((line) => line.name === name) === index);
