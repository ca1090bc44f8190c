import type { Box } from "../grid/cellBox.ts";
import { Legend, Plot } from "../pictures/Plot.tsx";
import type { Picture } from "../pictures/pictureOf.ts";

interface Props {
  readonly picture: Picture;
  readonly box: Box;
  readonly dark: boolean;
  readonly printed?: boolean;
}

// What the title and the legend take of a chart's height, and its edges of its width.
const around = 64;
const edges = 18;

/** A chart of a workbook in its box on the sheet, with the same said in words. */
export const ChartFigure = ({ picture, box, dark, printed = false }: Props) => (
  <figure class="chart" style={inPixels(box)} role="img" aria-label={`${picture.title}. ${picture.said}`}>
    <figcaption>{picture.title}</figcaption>
    <Plot
      picture={picture}
      dark={dark}
      height={Math.max(80, box.height - around)}
      printed={printed ? { width: Math.max(80, box.width - edges) } : undefined}
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
