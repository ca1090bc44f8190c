import { cautionsOfComparing } from "../comparison/cautionsOfComparing.ts";
import { letteredChart } from "../comparison/comparisonCharts.ts";
import type { SheetPlan, WorkbookPlan } from "../writing/authorWorkbook.ts";
import type { Look } from "../writing/looks.ts";
import { placeGrid, writeGrid } from "../writing/placeGrid.ts";
import type { SheetAuthor } from "../writing/sheetAuthor.ts";
import type { FlockPageContent, PageLine } from "./flockPageContent.ts";

const sheetName = "Flock page";
/** The last column that is printed, that of the words. */
const last = 4;
const standingRow = 3;
const chartRows = 20;

/** A page to send to the farmer of one flock: it names that flock and no other, and holds values only. */
export const flockPage = (content: FlockPageContent): WorkbookPlan => ({
  title: "Flock page",
  description: "Foot health of one flock among others.",
  made: content.made,
  sheets: [pageSheet(content)],
});

const pageSheet = (content: FlockPageContent): SheetPlan => ({
  name: sheetName,
  write(sheet) {
    const { flock, year, compared, standing, done, ranked } = content;
    sheet.widths(36, 9, 9, 9, 64);
    sheet.title(flock);
    sheet.put(
      { row: 1, column: 0 },
      compared < 2
        ? `${year}: no other flock to compare with`
        : `${year}: your flock among ${compared} flocks, the others by letters`,
      "subtitle",
    );
    sheet.rowHeight(1, 24);
    const doneRow = writeLines(sheet, standingRow, "Where the flock stands", standing) + 1;
    let row = writeLines(sheet, doneRow, "Cases and what is done", done) + 1;
    if (ranked.length > 0) {
      sheet.chart({ row, column: 0 }, ...letteredChart(writeRanked(sheet, content), chartTitle(content)));
      for (const end = row + chartRows; row < end; row++) sheet.rowHeight(row, 15);
    }
    cautionsOfComparing.forEach((words, step) => {
      const area = { top: row + step, left: 0, bottom: row + step, right: last };
      sheet.dress(area, "care");
      sheet.put({ row: row + step, column: 0 }, words);
      sheet.merge(area);
      sheet.rowHeight(row + step, Math.ceil(words.length / lineLength) * 15 + 3);
    });
    sheet.print({ upTo: { row: row + cautionsOfComparing.length - 1, column: last }, onOnePage: true });
  },
});

const chartTitle = ({ ranked, compared }: FlockPageContent): string =>
  `Steadied share lame with its range, lowest first${ranked.length < compared ? `: ${ranked.length} of the ${compared} flocks, at even steps` : ""}`;
/** Letters that fit in a line across the page, in one of the column of labels, and in one of the column of words. */
const lineLength = 120;
const labelLength = 38;
const wordsLength = 70;

/** @returns the row after the last */
function writeLines(sheet: SheetAuthor, top: number, question: string, lines: readonly PageLine[]): number {
  sheet.put({ row: top, column: 0 }, question, "question");
  const grid = placeGrid(
    sheet.name,
    ["label", "value", "low", "high", "words"],
    { row: top + 1, column: 0 },
    lines.length,
  );
  const shown = (heading: string, look: Look, key: keyof PageLine) =>
    ({ heading, look, holds: ({ place }: { readonly place: number }) => lines[place]?.[key] ?? null }) as const;
  writeGrid(sheet, grid, {
    label: shown("Figure", "words", "label"),
    value: shown("Value", "wordsCentre", "value"),
    low: shown("Low", "wordsCentre", "low"),
    high: shown("High", "wordsCentre", "high"),
    words: shown("In words", "words", "words"),
  });
  lines.forEach(({ label, look, words }, index) => {
    const { row, column } = grid.at("value", index);
    sheet.dress({ top: row, left: column, bottom: row, right: grid.at("high", index).column }, look);
    const high = Math.ceil(Math.max(words.length / wordsLength, label.length / labelLength));
    sheet.rowHeight(row, high * 15 + 1);
  });
  return grid.area.bottom + 1;
}

/** What the chart is drawn from, right of the printed page. */
function writeRanked(sheet: SheetAuthor, { ranked, target }: FlockPageContent) {
  const at = { row: standingRow + 1, column: last + 2 };
  const grid = placeGrid(
    sheet.name,
    ["letter", "steadied", "low", "high", "ownRange", "otherRange", "target"],
    at,
    ranked.length,
  );
  sheet.put({ row: at.row - 1, column: at.column }, "What the chart is drawn from", "question");
  // One spreadsheet rounds a difference otherwise than the others in its last digit, which no chart shows.
  const length = (index: number, own: boolean): number => {
    const flock = ranked[index];
    return flock === undefined || flock.own !== own ? 0 : Number((flock.high - flock.low).toFixed(9));
  };
  const shown = (heading: string, width: number, value: (index: number) => number | undefined) =>
    ({
      heading,
      width,
      look: "workedPercent",
      holds: ({ place }: { readonly place: number }) => value(place) ?? null,
    }) as const;
  writeGrid(sheet, grid, {
    letter: { heading: "flock", width: 18, look: "worked", holds: ({ place }) => ranked[place]?.called ?? null },
    steadied: shown("steadied share", 10, (index) => ranked[index]?.steadied),
    low: shown("low", 9, (index) => ranked[index]?.low),
    high: shown("high", 9, (index) => ranked[index]?.high),
    ownRange: shown("range of this flock", 11, (index) => length(index, true)),
    otherRange: shown("range of the others", 11, (index) => length(index, false)),
    target: shown("target", 9, () => target),
  });
  return grid;
}
