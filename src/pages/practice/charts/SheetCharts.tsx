import type { ChartPlace, ShownChart } from "../grid/sheetCharts.ts";
import { ChartFigure, inPixels } from "./ChartFigure.tsx";

interface Props {
  readonly charts: readonly ShownChart[];
  readonly places: readonly ChartPlace[];
  readonly dark: boolean;
}

/** The charts of the sheet in view, where its file has them. They let the pointer through to the cells below. */
export const SheetCharts = ({ charts, places, dark }: Props) => (
  <>
    {charts.map(({ id, picture }) => {
      const place = places.find((known) => known.id === id);
      if (!place) return null;
      const { pane, box } = place;
      return (
        <div key={id} class="pane" style={inPixels(pane)}>
          <ChartFigure
            picture={picture}
            box={{ ...box, left: box.left - pane.left, top: box.top - pane.top }}
            dark={dark}
          />
        </div>
      );
    })}
  </>
);
