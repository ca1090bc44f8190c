import { sumOf } from "../../../core/statistics/sumOf.ts";
import type { PrintedCell, PrintedRow, PrintedSheet } from "../grid/sheetToPrint.ts";
import type { PaperWish } from "./paperWish.ts";

/** Columns that stand side by side on a page. */
export interface PaperPart {
  /** Their places among the columns that are printed; those that stay in sight on the screen come first in each part. */
  readonly columns: readonly number[];
  readonly widths: readonly number[];
  /** So many of them stand in the part before too. */
  readonly again: number;
  /** How wide it may be. */
  readonly room: number;
}

/** How a sheet is laid on paper. */
export interface PaperLayout {
  readonly orientation: "portrait" | "landscape";
  readonly zoom: number;
  /** What becomes of the height of rows to write into, so that a form stays on its page. */
  readonly squeeze: number;
  /** So many of the heading rows, the last ones, stand on top of each page; those before on the first alone. */
  readonly repeated: number;
  readonly parts: readonly PaperPart[];
}

// A4 less a margin of a centimetre on each side, at 96 pixels an inch (ISO 216, CSS Values 4 §6.2), and less the line with
// the names of file and sheet.
const rooms = { portrait: { width: 717, height: 1020 }, landscape: { width: 1046, height: 690 } } as const;
/** In points: smaller letters are hard to read on paper (common practice, no source). */
export const smallestLetters = 8;
const usualLetters = 11;
// A little smaller is no reason to turn the paper.
const hardlySmaller = 0.87;

/**
 * Lays a sheet on A4: all columns on a page, upright or lengthwise, as long as its letters stay at 8 points or more; otherwise
 * its columns over several pages.
 */
export function layPages(sheet: PrintedSheet, heights = guessedHeights(sheet)): PaperLayout {
  const wide = sumOf(sheet.widths);
  const least = leastZoom(sheet);
  const zoomIn = (orientation: keyof typeof rooms): number => Math.min(1, rooms[orientation].width / Math.max(1, wide));
  const { orientation: wished } = sheet.wish;
  const upright = wished === "portrait" ? least : Math.max(least, hardlySmaller);
  const orientation = wished !== "landscape" && zoomIn("portrait") >= upright ? "portrait" : "landscape";
  const zoom = zoomIn(orientation);
  if (zoom < least) {
    const split = splitUp(sheet, least);
    return {
      orientation: "landscape",
      squeeze: 1,
      repeated: repeatedHeadings(sheet, "landscape", split.zoom),
      ...split,
    };
  }
  const smaller = wholePages(heights, orientation, zoom, least);
  const columns = sheet.widths.map((_, column) => column);
  return {
    orientation,
    ...smaller,
    repeated: repeatedHeadings(sheet, orientation, smaller.zoom),
    parts: [partOf(sheet, columns, rooms[orientation].width / smaller.zoom)],
  };

  /** What its file has on one page stays on one, where its letters stay large enough. */
  function wholePages(high: readonly number[], at: keyof typeof rooms, most: number, smallest: number) {
    const room = rooms[at].height * sure;
    const wanted = high.map((each) => room / Math.max(1, each)).filter((whole) => whole >= smallest);
    const [only = 0] = high;
    const blank = sumOf(sheet.rows.filter(isBlank).map(({ height }) => height));
    const squeeze = 1 - (only - room / smallest) / Math.max(1, blank);
    return high.length === 1 && wanted.length === 0 && squeeze >= narrowest
      ? { zoom: Math.min(most, smallest), squeeze }
      : { zoom: Math.min(most, ...wanted), squeeze: 1 };
  }
}

// Lines and letters are a little higher on paper than they were measured on the screen.
const sure = 0.95;
// A line to write into may lose a quarter of its height.
const narrowest = 0.75;

/** Whether a row is one to write into. */
export const isBlank = ({ cells }: PrintedRow): boolean => cells.every(({ text }) => text === "");

/** The columns over as few pages as letters of the smallest size need, as large as goes on no more of them. */
function splitUp(sheet: PrintedSheet, least: number): Pick<PaperLayout, "zoom" | "parts"> {
  const at = (zoom: number) => ({ zoom, parts: split(sheet, rooms.landscape.width / zoom) });
  const smallest = at(least);
  for (let larger = 1; larger > least; larger -= 0.05) {
    const tried = at(larger);
    if (tried.parts.length <= smallest.parts.length) return tried;
  }
  return smallest;
}

/** Browsers repeat no headings that take more than a quarter of a page; some room is left for texts over more lines. */
function repeatedHeadings({ headings }: PrintedSheet, orientation: keyof typeof rooms, zoom: number): number {
  let room = (rooms[orientation].height * 0.15) / zoom;
  let repeated = 0;
  for (const { height } of [...headings].reverse()) {
    room -= height;
    if (room < 0) break;
    repeated += 1;
  }
  return repeated;
}

/**
 * Cells of a row as far as they stand in a part. What begins in another part is blank in this one, and so is a long text that
 * stood in full in the part before: over more lines it would make headings too high to stand on each page.
 */
export function cellsIn(row: PrintedRow, { columns, again }: PaperPart): readonly PrintedCell[] {
  return row.cells.flatMap((cell) => {
    const here = columns.filter((column) => column >= cell.column && column < cell.column + cell.columns);
    if (here.length === 0) return [];
    const isWhole = here[0] === cell.column && (again === 0 || here.length === cell.columns);
    return [{ ...cell, columns: here.length, text: isWhole ? cell.text : "" }];
  });
}

/** So many rows of a part there are until nothing more stands in it. */
export function filledRows(rows: readonly PrintedRow[], part: PaperPart): number {
  let count = rows.length;
  const isEmpty = ({ text, edges }: PrintedCell): boolean => text === "" && edges.every((edge) => edge === undefined);
  while (count > 0 && cellsIn(rows[count - 1] as PrintedRow, part).every(isEmpty)) count -= 1;
  return count;
}

function leastZoom({ headings, rows }: PrintedSheet): number {
  let smallest = usualLetters;
  for (const { cells } of [...headings, ...rows])
    for (const { text, size } of cells) if (text !== "" && size !== undefined) smallest = Math.min(smallest, size);
  return Math.min(1, smallestLetters / smallest);
}

/** How high those rows are that the file has on one page; none where it leaves that to the printer. */
function guessedHeights({ wish, headings, rows }: PrintedSheet): readonly number[] {
  if (!hasOwnPages(wish)) return [];
  const heading = sumOf(headings.map(({ height }) => height));
  const heights = [heading];
  for (const { height, isPageBegin } of rows) {
    if (isPageBegin) heights.push(heading);
    heights[heights.length - 1] = (heights.at(-1) ?? 0) + height;
  }
  return heights;
}

/** Whether a file says what stands on each page. */
export const hasOwnPages = ({ isOnePage, pagesBeginAt }: PaperWish): boolean => isOnePage || pagesBeginAt.size > 0;

const partOf = ({ widths }: PrintedSheet, columns: readonly number[], room: number, again = 0): PaperPart => ({
  columns,
  // What is wider than the paper has its text over more lines.
  widths: columns.map((column) => Math.min(widths[column] ?? 0, room)),
  again,
  room,
});

/** The columns in as many parts as pages are needed for a room that wide; no chart is cut where it need not be. */
function split(sheet: PrintedSheet, room: number): readonly PaperPart[] {
  const { widths, charts } = sheet;
  const edges = widths.map((_, column) => sumOf(widths.slice(0, column)));
  const isThroughChart = (column: number): boolean =>
    charts.some(({ left, width }) => left < (edges[column] ?? 0) - 1 && left + width > (edges[column] ?? 0) + 1);
  const kept = sheet.frozen > 0 && sumOf(widths.slice(0, sheet.frozen)) <= room / 2 ? sheet.frozen : 0;
  const parts: PaperPart[] = [];
  for (let from = 0; from < widths.length; ) {
    const again = parts.length === 0 ? [] : widths.slice(0, kept).map((_, column) => column);
    const taken = sumOf(again.map((column) => widths[column] ?? 0));
    let to = from + 1;
    while (to < widths.length && taken + sumOf(widths.slice(from, to + 1)) <= room) to += 1;
    let uncut = to;
    while (uncut > from && uncut < widths.length && isThroughChart(uncut)) uncut -= 1;
    if (uncut > from) to = uncut;
    const own = widths.slice(from, to).map((_, index) => from + index);
    parts.push(partOf(sheet, [...again, ...own], room, again.length));
    from = to;
  }
  return parts;
}
