import type { SheetPlan } from "../writing/authorWorkbook.ts";
import type { Look } from "../writing/looks.ts";
import { orWords } from "../writing/orWords.ts";
import { rankedChart } from "./comparisonCharts.ts";
import type { ComparisonContent } from "./comparisonContent.ts";
import { comparisonColumn } from "./comparisonSheet.ts";
import { columnOf, firstFlock, roomFor, sheetNames } from "./comparisonTables.ts";
import { rankedColumn, steadiedColumn } from "./figuresPlaces.ts";

const answersRow = 5;
const chartRow = 16;
const listRow = chartRow + 19;
/** Flocks side by side in the list. */
const blocks = 2;

const percent = (share: string): string => `ROUND(100*${share},1)&" %"`;

/** A page for the farmer of one flock: it names that flock, and the others by letters. */
export const oneFlockSheet = ({ flocks, chosen }: ComparisonContent): SheetPlan => ({
  name: sheetNames.one,
  write(sheet, nameCell) {
    const rows = roomFor(flocks.length);
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
    const cell = { top: 2, left: 1, bottom: 2, right: 1 };
    nameCell("chosen_flock", sheet.name, cell);
    sheet.accept(cell, {
      of: { list: "flock_list" },
      words: "Choose a flock from the list; it is the table on the sheet Flocks.",
    });
    answers(rows).forEach(([label, formula, look], step) => {
      const row = answersRow + step;
      sheet.put({ row, column: 0 }, label, "label");
      sheet.put({ row, column: 1 }, { formula: `IF(LEN(chosen_flock)=0,"",${orWords(formula, "not known")})` }, look);
    });
    sheet.chart(
      { row: chartRow, column: 0 },
      ...rankedChart("letter", rows, "Steadied share lame with its range, lowest first"),
    );
    writeLetters(sheet, rows);
    sheet.protect();
    const last = listRow + 1 + Math.ceil(rows / blocks);
    sheet.print({ cells: `$A$1:$G$${last}`, onOnePage: rows <= 80 });
  },
});

function answers(rows: number): readonly (readonly [label: string, formula: string, look: Look])[] {
  const at = `MATCH(chosen_flock,${columnOf(sheetNames.comparison, 0, firstFlock, rows)},0)`;
  const of = (heading: string, after = 0): string =>
    `INDEX(${columnOf(sheetNames.comparison, comparisonColumn(heading) + after, firstFlock, rows)},${at})`;
  const steadied = steadiedColumn("steadied share", rows);
  // Joined to nothing, a text that a function gave is found equal to a typed one in every spreadsheet.
  const others = `IF(${steadiedColumn("flock", rows)}&""=chosen_flock,"",IF(ISNUMBER(${steadied}),${steadied},""))`;
  const change = of("change on the year before");
  return [
    ["Sheep looked at, lame", `${of("looked at")}&" looked at, "&${of("lame")}&" lame"`, "worked"],
    ["Share lame", of("share lame"), "figureShare"],
    ["Its range", `${percent(of("low"))}&" to "&${percent(of("high"))}`, "worked"],
    ["Against the target", of("against the target"), "worked"],
    ["In the funnel", of("in the funnel"), "worked"],
    [
      "Steadied share, rank",
      `${percent(of("steadied share"))}&", rank "&${of("rank")}&" of "&flocks_counted`,
      "worked",
    ],
    ["Better than", `${percent(`FOOT.FLOCKRANK(${of("steadied share")},${others})`)}&" of the other flocks"`, "worked"],
    [
      "Since the year before",
      `IF(ISNUMBER(${change}),ROUND(100*ABS(${change}),1)&IF(${change}<0," fewer"," more")&" lame in each 100 sheep"&IF(${of("change on the year before", 1)}*${of("change on the year before", 2)}>0,""," (chance alone may do as much)"),"not known")`,
      "worked",
    ],
    [
      "Antibiotics, mg/PCU",
      `IF(ISNUMBER(${of("mg/PCU")}),ROUND(${of("mg/PCU")},2)&"; half of the flocks used less than "&ROUND(MEDIAN(${columnOf(sheetNames.comparison, comparisonColumn("mg/PCU"), firstFlock, rows)}),2),"not known")`,
      "worked",
    ],
  ];
}

function writeLetters(sheet: Parameters<SheetPlan["write"]>[0], rows: number): void {
  sheet.put({ row: listRow - 1, column: 0 }, "All flocks in order of their steadied share", "question");
  const length = Math.ceil(rows / blocks);
  for (let block = 0; block < blocks; block++) {
    const left = block * 4;
    sheet.put({ row: listRow, column: left }, "flock", "workedHeading");
    sheet.putRow({ row: listRow, column: left + 1 }, ["steadied share", "range"], "workedHeadingCentre");
    for (let step = 0; step < length; step++) {
      const place = block * length + step;
      if (place >= rows) continue;
      const row = listRow + 1 + step;
      const of = (name: Parameters<typeof rankedColumn>[0]): string =>
        `INDEX(${rankedColumn(name, rows)},${place + 1})`;
      const shown = (formula: string): string => `IF(LEN(${of("letter")})=0,"",${formula})`;
      sheet.put({ row, column: left }, { formula: shown(of("letter")) }, "worked");
      sheet.put({ row, column: left + 1 }, { formula: shown(of("steadied share")) }, "workedPercent");
      sheet.put(
        { row, column: left + 2 },
        { formula: shown(`${percent(of("low"))}&" to "&${percent(of("high"))}`) },
        "workedCount",
      );
    }
    const n = listRow + 2;
    const letters = left === 0 ? "A" : "E";
    sheet.emphasize(
      { top: listRow + 1, left, bottom: listRow + length, right: left + 2 },
      [`AND(LEN(chosen_flock)>0,$${letters}${n}=chosen_flock)`, "strong"],
      [`LEN($${letters}${n})>0`, "line"],
    );
  }
}
