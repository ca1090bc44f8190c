import { funnelFunction } from "../../../functions/benchmarking/funnel.ts";
import { shrunkPrevalenceFunction } from "../../../functions/benchmarking/shrunkPrevalence.ts";
import { columnLetters } from "../../workbook/address.ts";
import type { SheetPlan } from "../writing/authorWorkbook.ts";
import { orWords } from "../writing/orWords.ts";
import type { NameCell, SheetAuthor } from "../writing/sheetAuthor.ts";
import { listLooks, writeList } from "../writing/writeList.ts";
import type { ComparisonContent } from "./comparisonContent.ts";
import { comparisonColumn } from "./comparisonSheet.ts";
import { columnOf, firstFlock, roomFor, sheetNames } from "./comparisonTables.ts";
import { figuresHeading, figuresTop, gridSizes, parts, rankedColumns, steadiedColumn } from "./figuresPlaces.ts";

const own = (column: number, rows: number): string => columnOf(sheetNames.figures, column, figuresTop, rows);
const fewFlocks = "two flocks or more are needed";

/** The lists that everything is drawn from, in places that do not move. */
export const figuresSheet = ({ flocks }: ComparisonContent): SheetPlan => ({
  name: sheetNames.figures,
  write(sheet, nameCell) {
    const rows = roomFor(flocks.length);
    sheet.title("Figures");
    sheet.put({ row: 1, column: 0 }, "Nothing to type here. #N/A is meant: it leaves a gap in a chart.", "note");
    writeCounted(sheet, nameCell, rows);
    writeLists(sheet, rows);
    writeLimits(sheet, nameCell, rows);
    writeRanked(sheet, rows);
    sheet.protect();
    sheet.print({ sideways: true, cells: `$A$1:$S$${figuresTop + rows}`, repeat: [figuresHeading, figuresHeading] });
  },
});

// A row that cannot count is kept out of every list, or it would take the others with it.
function writeCounted(sheet: SheetAuthor, nameCell: NameCell, rows: number): void {
  const funnelWidths = [16, 9, 9, 9, 9, 9, 9, 23];
  sheet.widths(8, 24, 10, 8, 4, ...funnelWidths, 4, 16);
  sheet.put({ row: figuresHeading - 1, column: 0 }, "Flocks that count", "question");
  sheet.putRow({ row: figuresHeading, column: 0 }, ["place", "flock", "looked at", "lame"], "workedHeading");
  for (let place = 0; place < rows; place++) {
    const row = figuresTop + place;
    const [name, seen, lame] = ["Flock", "Looked at", "Lame"].map(
      (heading) => `INDEX(Flocks[${heading}],${place + 1})`,
    ) as [string, string, string];
    const whole = `${seen}>0,${lame}>=0,${lame}<=${seen},INT(${seen})=${seen},INT(${lame})=${lame}`;
    const once = `SUMPRODUCT((TRIM(Flocks[Flock])=TRIM(${name}))*1)=1`;
    const before = place === 0 ? "1" : `COUNT($A$${figuresTop + 1}:$A$${row})+1`;
    sheet.put(
      { row, column: 0 },
      { formula: `IF(LEN(${name})=0,"",IF(COUNT(${seen},${lame})<2,"",IF(AND(${whole},${once}),${before},"")))` },
      "workedCount",
    );
    [name, seen, lame].forEach((cell, step) => {
      sheet.put(
        { row, column: 1 + step },
        { formula: `IF(ISNUMBER($A${row + 1}),${cell},"")` },
        step === 0 ? "worked" : "workedCount",
      );
    });
  }
  const sums = { row: 2, column: 1 };
  sheet.put(sums, { formula: `COUNT(${own(0, rows)})` }, "workedCount");
  sheet.put(
    { ...sums, column: 2 },
    { formula: `IF(SUM(${own(2, rows)})=0,0,SUM(${own(3, rows)})/SUM(${own(2, rows)}))` },
    "workedPercent",
  );
  sheet.put({ ...sums, column: 0 }, "all", "label");
  const left = columnOf(sheetNames.comparison, comparisonColumn("left out, because"), firstFlock, rows);
  sheet.put({ ...sums, column: 3 }, { formula: `SUMPRODUCT((LEN(${left})>0)*1)` }, "workedCount");
  nameCell("rows_to_mend", sheet.name, { top: 2, left: 3, bottom: 2, right: 3 });
  nameCell("flocks_counted", sheet.name, { top: 2, left: 1, bottom: 2, right: 1 });
  nameCell("share_of_all", sheet.name, { top: 2, left: 2, bottom: 2, right: 2 });
}

function writeLists(sheet: SheetAuthor, rows: number): void {
  const counted = [1, 3, 2].map((column) => own(column, rows)).join(",");
  const lists = [
    { question: "Funnel", column: parts.funnel, gives: funnelFunction, formula: `FOOT.FUNNEL(${counted})` },
    {
      question: "Steadied shares",
      column: parts.steadied,
      gives: shrunkPrevalenceFunction,
      formula: `FOOT.SHRUNKPREV(${counted})`,
    },
  ];
  for (const { question, column, gives, formula } of lists) {
    dressList(sheet, column, gives, rows);
    writeList(sheet, {
      question,
      row: figuresHeading,
      column,
      rows,
      gives,
      formula: `IF(flocks_counted<2,"${fewFlocks}",${orWords(formula, "every flock has none or all of its sheep lame")})`,
    });
  }
}

function dressList(
  sheet: SheetAuthor,
  left: number,
  gives: typeof funnelFunction | typeof shrunkPrevalenceFunction,
  rows: number,
): void {
  listLooks(gives).forEach((look, step) => {
    sheet.dress({ top: figuresTop, left: left + step, bottom: figuresTop + rows - 1, right: left + step }, look);
  });
}

// The limits for every size between the smallest and the largest flock, so that they show as curves.
function writeLimits(sheet: SheetAuthor, nameCell: NameCell, rows: number): void {
  const left = parts.grid;
  sheet.put({ row: figuresHeading - 1, column: left }, "Limits by size of flock", "question");
  sheet.putRow({ row: figuresHeading, column: left }, ["step", "lame", "looked at"], "workedHeading");
  const seen = own(2, rows);
  for (let step = 0; step < gridSizes; step++) {
    const row = figuresTop + step;
    sheet.put({ row, column: left }, { formula: `IF(flocks_counted<2,"","step ${step + 1}")` }, "worked");
    sheet.put({ row, column: left + 1 }, { formula: 'IF(flocks_counted<2,"",0)' }, "workedCount");
    sheet.put(
      { row, column: left + 2 },
      { formula: `IF(flocks_counted<2,"",ROUND(MIN(${seen})+(MAX(${seen})-MIN(${seen}))*${step}/${gridSizes - 1},0))` },
      "workedCount",
    );
  }
  const grid = [0, 1, 2].map((step) => own(left + step, gridSizes)).join(",");
  dressList(sheet, parts.limits, funnelFunction, gridSizes);
  writeList(sheet, {
    question: "Limits",
    row: figuresHeading,
    column: parts.limits,
    rows: gridSizes,
    gives: funnelFunction,
    formula: `IF(flocks_counted<2,"${fewFlocks}",${orWords(`FOOT.FUNNEL(${grid},share_of_all)`, "not worked out")})`,
  });
  nameCell("limits_drawn", sheet.name, {
    top: figuresTop,
    left: parts.limits,
    bottom: figuresTop + gridSizes - 1,
    right: parts.limits + 6,
  });
}

/** The flocks in order of rank, for the charts; equal ranks in the order of the rows. */
function writeRanked(sheet: SheetAuthor, rows: number): void {
  const left = parts.ranked;
  sheet.put({ row: figuresHeading - 1, column: left - 1 }, "In order", "question");
  sheet.putRow({ row: figuresHeading, column: left - 1 }, ["order", ...rankedColumns], "workedHeading");
  const rank = steadiedColumn("rank", rows);
  const letters = columnLetters(left);
  const rankTop = `$${columnLetters(parts.steadied + 5)}$${figuresTop + 1}`;
  for (let place = 0; place < rows; place++) {
    const row = figuresTop + place;
    const n = row + 1;
    // The place in the list of the flock whose turn it is.
    const rankHere = `$${columnLetters(parts.steadied + 5)}${n}`;
    const ties = `COUNTIF(${rankTop}:${rankHere},${rankHere})`;
    sheet.put(
      { row, column: left - 1 },
      { formula: `IF(ISNUMBER(${rankHere}),${rankHere}+${ties}-1,"")` },
      "workedCount",
    );
    const at = `MATCH(${place + 1},${own(left - 1, rows)},0)`;
    const there = `${place + 1}<=COUNT(${rank})`;
    const of = (heading: string): string => `INDEX(${steadiedColumn(heading, rows)},${at})`;
    const name = `$${letters}${n}`;
    const cell = (step: number): string => `$${columnLetters(left + step)}${n}`;
    const chosen = `AND(LEN(chosen_flock)>0,${name}=chosen_flock)`;
    const lettered = place < 26 ? String.fromCharCode(65 + place) : columnLetters(place);
    // One spreadsheet rounds a difference otherwise than the others in its last digit, which no chart shows.
    const range = `ROUND(${cell(3)}-${cell(2)},9)`;
    // Joined to nothing, a text that a function gave is found equal to a typed one in every spreadsheet.
    const formulas: readonly string[] = [
      `IF(${there},${of("flock")}&"","")`,
      `IF(${there},IF(${chosen},${name},"${lettered}"),"")`,
      `IF(${there},${of("low")},NA())`,
      `IF(${there},${of("high")},NA())`,
      `IF(${there},${range},NA())`,
      `IF(${there},${of("steadied share")},NA())`,
      `IF(${there},IF(${chosen},${cell(4)},0),NA())`,
      `IF(${there},IF(${chosen},0,${cell(4)}),NA())`,
      `IF(${there},${of("share")},NA())`,
      `IF(${there},share_of_all,NA())`,
      `IF(${there},target,NA())`,
    ];
    formulas.forEach((formula, step) => {
      sheet.put({ row, column: left + step }, { formula }, step < 2 ? "worked" : "workedPercent");
    });
  }
}
