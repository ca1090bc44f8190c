import type { Box } from "../grid/cellBox.ts";
import { Legend, Plot } from "../pictures/Plot.tsx";
import type { Picture } from "../pictures/pictureOf.ts";

interface Props {
  readonly picture: Picture;
  readonly box: Box;
  readonly dark: boolean;
  /** On paper: how many times as large as on the screen its letters are. */
  readonly printed?: number | undefined;
}

// What the title and the legend take of a chart's height, and its edges of its width.
const around = 64;
const edges = 18;

/** A chart of a workbook in its box on the sheet, with the same said in words. */
export const ChartFigure = ({ picture, box, dark, printed }: Props) => (
  <figure
    class="chart"
    style={{ ...inPixels(box), ...(printed === undefined ? {} : { "--letters": printed }) }}
    role="img"
    aria-label={`${picture.title}. ${picture.said}`}
  >
    <figcaption>{picture.title}</figcaption>
    <Plot
      picture={picture}
      dark={dark}
      height={Math.max(80, box.height - around * (printed ?? 1))}
      printed={printed === undefined ? undefined : { width: Math.max(80, box.width - edges), letters: printed }}
    />
    {picture.lines.length > 1 && <Legend picture={picture} dark={dark} />}
  </figure>
);

export const inPixels = ({ left, top, width, height }: Box) => ({
  left: `${left}px`,
  top: `${top}px`,
  width: `${width}px`,
  height: `${height}px`,
});
