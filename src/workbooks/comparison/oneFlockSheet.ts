import type { SheetPlan } from "../writing/authorWorkbook.ts";
import type { Look } from "../writing/looks.ts";
import { orWords } from "../writing/orWords.ts";
import { placeGrid, writeGrid } from "../writing/placeGrid.ts";
import { oneCell } from "../writing/references.ts";
import type { SheetAuthor } from "../writing/sheetAuthor.ts";
import { letteredChart } from "./comparisonCharts.ts";
import type { ComparisonContent } from "./comparisonContent.ts";
import { type PlacedComparison, sheetNames } from "./placedComparison.ts";

const answersRow = 5;
const chartRow = 16;
const listRow = chartRow + 19;
/** Flocks side by side in the list. */
const blocks = 2;

const percent = (share: string): string => `ROUND(100*${share},1)&" %"`;

/** A page for the farmer of one flock: it names that flock, and the others by letters. */
export const oneFlockSheet = ({ chosen }: ComparisonContent, placed: PlacedComparison): SheetPlan => ({
  name: sheetNames.one,
  write(sheet, nameCell) {
    const { rows } = placed;
    sheet.widths(27, 13, 18, 3, 27, 13, 18);
    sheet.title({ formula: 'IF(LEN(chosen_flock)=0,"One flock",chosen_flock)' });
    sheet.put(
      { row: 1, column: 0 },
      {
        formula:
          'IF(flocks_counted=0,"No flocks yet: type them on the sheet Flocks.",IF(LEN(year_compared)=0,"",year_compared&": ")&"your flock among "&flocks_counted&" flocks, the others by letters")',
      },
      "subtitle",
    );
    sheet.rowHeight(1, 24);
    sheet.put({ row: 2, column: 0 }, "Flock (choose)", "label");
    sheet.put({ row: 2, column: 1 }, chosen ?? null, "fieldText");
    sheet.dress({ top: 2, left: 1, bottom: 2, right: 2 }, "fieldText");
    sheet.merge({ top: 2, left: 1, bottom: 2, right: 2 });
    const cell = { row: 2, column: 1 };
    nameCell("chosen_flock", sheet.name, cell);
    sheet.accept(oneCell(cell), {
      of: { list: "flock_list" },
      words: "Choose a flock from the list; it is the table on the sheet Flocks.",
    });
    answers(placed).forEach(([label, formula, look], step) => {
      const row = answersRow + step;
      sheet.put({ row, column: 0 }, label, "label");
      sheet.put({ row, column: 1 }, { formula: `IF(LEN(chosen_flock)=0,"",${orWords(formula, "not known")})` }, look);
    });
    sheet.chart(
      { row: chartRow, column: 0 },
      ...letteredChart(placed.ranked, "Steadied share lame with its range, lowest first"),
    );
    writeLetters(sheet, placed);
    sheet.protect();
    const last = listRow + 1 + Math.ceil(rows / blocks);
    sheet.print({ upTo: { row: last - 1, column: 6 }, onOnePage: rows <= 80 });
  },
});

function answers({
  comparison,
  steadied,
  rows,
}: PlacedComparison): readonly (readonly [label: string, formula: string, look: Look])[] {
  const at = `MATCH(chosen_flock,${comparison.range("flock")},0)`;
  const of = (key: Parameters<typeof comparison.range>[0]): string => `INDEX(${comparison.range(key)},${at})`;
  const shares = steadied.range("steadied share", rows);
  // Joined to nothing, a text that a function gave is found equal to a typed one in every spreadsheet.
  const others = `IF(${steadied.range("flock", rows)}&""=chosen_flock,"",IF(ISNUMBER(${shares}),${shares},""))`;
  const change = of("change");
  return [
    ["Sheep looked at, lame", `${of("lookedAt")}&" looked at, "&${of("lame")}&" lame"`, "worked"],
    ["Share lame", of("share"), "figureShare"],
    ["Its range", `${percent(of("low"))}&" to "&${percent(of("high"))}`, "worked"],
    ["Against the target", of("against"), "worked"],
    ["In the funnel", of("funnel"), "worked"],
    ["Steadied share, rank", `${percent(of("steadied"))}&", rank "&${of("rank")}&" of "&flocks_counted`, "worked"],
    ["Better than", `${percent(`FOOT.FLOCKRANK(${of("steadied")},${others})`)}&" of the other flocks"`, "worked"],
    [
      "Since the year before",
      `IF(ISNUMBER(${change}),ROUND(100*ABS(${change}),1)&IF(${change}<0," fewer"," more")&" lame in each 100 sheep"&IF(${of("changeLow")}*${of("changeHigh")}>0,""," (chance alone may do as much)"),"not known")`,
      "worked",
    ],
    [
      "Antibiotics, mg/PCU",
      `IF(ISNUMBER(${of("mgPcu")}),ROUND(${of("mgPcu")},2)&"; half of the flocks used less than "&ROUND(MEDIAN(${comparison.range("mgPcu")}),2),"not known")`,
      "worked",
    ],
  ];
}

function writeLetters(sheet: SheetAuthor, { ranked, rows }: PlacedComparison): void {
  sheet.put({ row: listRow - 1, column: 0 }, "All flocks in order of their steadied share", "question");
  const length = Math.ceil(rows / blocks);
  for (let block = 0; block < blocks; block++) {
    const first = block * length;
    const grid = placeGrid(
      sheet.name,
      ["flock", "share", "range"],
      { row: listRow, column: block * 4 },
      Math.min(length, rows - first),
    );
    const shown =
      (formula: (of: (key: Parameters<typeof ranked.range>[0]) => string) => string) =>
      ({ place }: { readonly place: number }) => {
        const of = (key: Parameters<typeof ranked.range>[0]): string =>
          `INDEX(${ranked.range(key)},${first + place + 1})`;
        return { formula: `IF(LEN(${of("letter")})=0,"",${formula(of)})` };
      };
    writeGrid(sheet, grid, {
      flock: { heading: "flock", look: "worked", holds: shown((of) => of("letter")) },
      share: { heading: "steadied share", look: "workedPercent", holds: shown((of) => of("steadied")) },
      range: {
        heading: "range",
        look: "workedCount",
        holds: shown((of) => `${percent(of("low"))}&" to "&${percent(of("high"))}`),
      },
    });
    sheet.emphasize(
      grid.rows,
      [`AND(LEN(chosen_flock)>0,${grid.cell("flock")}=chosen_flock)`, "strong"],
      [`LEN(${grid.cell("flock")})>0`, "line"],
    );
  }
}
