import { placeText } from "../../../workbook/address.ts";
import { chartPicture } from "../charts/chartPicture.ts";
import { type BookChart, type Corner, readCharts } from "../charts/readCharts.ts";
import type { Picture } from "../pictures/pictureOf.ts";
import { type Box, cellBox } from "./cellBox.ts";
import { cellsNamed } from "./cellsNamed.ts";
import type { GridBook } from "./gridBook.ts";
import { sheetPlace } from "./sheetId.ts";
import type { PlacedChart } from "./sheetToPrint.ts";

/** A chart on the sheet in view. */
export interface ShownChart {
  readonly id: string;
  readonly picture: Picture;
}

/** Where a chart is in the window. */
export interface ChartPlace {
  readonly id: string;
  readonly box: Box;
  /** The part of the sheet it moves in, outside which nothing of it is seen. */
  readonly pane: Box;
}

export interface SheetCharts {
  /** Those on the sheet in view, with the figures that their cells hold now. */
  readonly shown: () => readonly ShownChart[];
  readonly places: () => readonly ChartPlace[];
  readonly placed: () => readonly PlacedChart[];
  /** Another workbook is open. */
  readonly start: () => void;
}

// A bar to scroll with lies over the lower and the right edge.
const bar = 12;

/** The charts that the open workbook has on its sheets. */
export function sheetCharts(book: GridBook): SheetCharts {
  const known = new Map<string, readonly BookChart[]>();
  const chartsInView = (): readonly BookChart[] => {
    const opened = book.opened();
    const sheet = book.selectedSheet();
    if (!opened || sheet === undefined) return [];
    const charts = known.get(sheet) ?? readCharts(opened.workbook, sheetPlace(sheet)).charts;
    known.set(sheet, charts);
    return charts;
  };
  const idOf = (from: Corner, index: number): string => `${book.selectedSheet()} ${placeText(from)} ${index}`;

  const corner = ({ row, column, right, down }: Corner): { left: number; top: number; pane: Box } | undefined => {
    const found = cellBox(book.injector, book.unit(), row, column);
    return found && { left: found.cell.left + right, top: found.cell.top + down, pane: found.pane };
  };

  const placed = (): readonly PlacedChart[] => {
    const own = book.selectedSheet() ?? "";
    const named = (reference: string) => cellsNamed(book, reference, own);
    return chartsInView().map((chart) => ({
      from: chart.from,
      to: chart.to,
      picture: chartPicture(chart, {
        texts: (reference) => named(reference)?.texts() ?? [],
        values: (reference) => named(reference)?.cells.flat() ?? [],
      }),
    }));
  };

  return {
    placed,
    shown: () => placed().map(({ from, picture }, index) => ({ id: idOf(from, index), picture })),
    places: () =>
      chartsInView().flatMap((chart, index): ChartPlace[] => {
        const [from, to] = [corner(chart.from), corner(chart.to)];
        if (!from || !to) return [];
        const { left, top, pane } = from;
        const box = { left, top, width: to.left - left, height: to.top - top };
        const seen = { ...pane, width: pane.width - bar, height: pane.height - bar };
        const isSeen =
          left < seen.left + seen.width && to.left > seen.left && top < seen.top + seen.height && to.top > seen.top;
        return isSeen ? [{ id: idOf(chart.from, index), box, pane: seen }] : [];
      }),
    start: () => known.clear(),
  };
}
