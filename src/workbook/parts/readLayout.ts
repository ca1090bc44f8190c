import { isYes } from "../xml/isYes.ts";
import { walkXml } from "../xml/walkXml.ts";

/** How a sheet is laid out. */
export interface Layout {
  /** Widths in characters, of columns counted from 0. */
  readonly widths: readonly {
    readonly from: number;
    readonly to: number;
    readonly width: number;
    readonly hidden: boolean;
  }[];
  /** Heights in points, by row counted from 0. */
  readonly heights: ReadonlyMap<number, number>;
  readonly hiddenRows: ReadonlySet<number>;
  readonly usualWidth: number | undefined;
  readonly usualHeight: number | undefined;
  /** Rows at the top and columns at the left that stay in sight. */
  readonly frozen: { readonly rows: number; readonly columns: number };
  readonly gridLines: boolean;
}

/** Widths, heights and frozen rows of a sheet part; the text may be empty, as that of a chart sheet. */
export function readLayout(part: string, text: string): Layout {
  const widths: { from: number; to: number; width: number; hidden: boolean }[] = [];
  const heights = new Map<number, number>();
  const hiddenRows = new Set<number>();
  let usualWidth: number | undefined;
  let usualHeight: number | undefined;
  let frozen = { rows: 0, columns: 0 };
  let gridLines = true;
  // A view that somebody kept under a name has panes of its own.
  let inView = false;
  if (text !== "") {
    walkXml(part, text, {
      open({ name, attributes }) {
        if (name === "col") {
          const { min = "1", max = min, width, hidden } = attributes;
          if (width !== undefined)
            widths.push({ from: Number(min) - 1, to: Number(max) - 1, width: Number(width), hidden: isYes(hidden) });
        } else if (name === "row" && attributes.r !== undefined) {
          const row = Number(attributes.r) - 1;
          if (attributes.ht !== undefined) heights.set(row, Number(attributes.ht));
          if (isYes(attributes.hidden)) hiddenRows.add(row);
        } else if (name === "sheetFormatPr") {
          usualHeight = numberIn(attributes.defaultRowHeight);
          usualWidth = numberIn(attributes.defaultColWidth);
        } else if (name === "pane" && inView && /^frozen/.test(attributes.state ?? "")) {
          frozen = { rows: Number(attributes.ySplit ?? 0), columns: Number(attributes.xSplit ?? 0) };
        } else if (name === "sheetView") {
          inView = true;
          gridLines = isYes(attributes.showGridLines ?? "1");
        }
      },
      close(name) {
        if (name === "sheetView") inView = false;
      },
    });
  }
  return { widths, heights, hiddenRows, usualWidth, usualHeight, frozen, gridLines };
}

const numberIn = (text: string | undefined): number | undefined => (text === undefined ? undefined : Number(text));
