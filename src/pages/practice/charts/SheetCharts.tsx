import type { ChartPlace, ShownChart } from "../grid/sheetCharts.ts";
import { Legend, Plot } from "../pictures/Plot.tsx";

interface Props {
  readonly charts: readonly ShownChart[];
  readonly places: readonly ChartPlace[];
  readonly dark: boolean;
}

// What the title and the legend take of a chart's height.
const around = 64;

/** The charts of the sheet in view, where its file has them. They let the pointer through to the cells below. */
export const SheetCharts = ({ charts, places, dark }: Props) => (
  <>
    {charts.map(({ id, picture }) => {
      const place = places.find((known) => known.id === id);
      if (!place) return null;
      const { pane, box } = place;
      return (
        <div key={id} class="pane" style={inPixels(pane)}>
          <figure
            class="chart"
            style={inPixels({ ...box, left: box.left - pane.left, top: box.top - pane.top })}
            role="img"
            aria-label={`${picture.title}. ${picture.said}`}
          >
            <figcaption>{picture.title}</figcaption>
            <Plot picture={picture} dark={dark} height={Math.max(80, box.height - around)} />
            {picture.lines.length > 1 && <Legend picture={picture} dark={dark} />}
          </figure>
        </div>
      );
    })}
  </>
);

const inPixels = ({ left, top, width, height }: ChartPlace["box"]) => ({
  left: `${left}px`,
  top: `${top}px`,
  width: `${width}px`,
  height: `${height}px`,
});
