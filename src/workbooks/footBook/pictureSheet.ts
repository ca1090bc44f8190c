import { caseTableFunction } from "../../../functions/animals/caseTable.ts";
import { soundCurveFunction } from "../../../functions/animals/soundCurve.ts";
import { lesionMixFunction } from "../../../functions/counting/lesionMix.ts";
import { lameWatchFunction } from "../../../functions/watching/lameWatch.ts";
import { columnLetters } from "../../workbook/address.ts";
import { quoteSheet } from "../../workbook/formula/structured.ts";
import type { SheetPlan } from "../writing/authorWorkbook.ts";
import type { SheetAuthor } from "../writing/sheetAuthor.ts";
import { listLooks, writeList } from "../writing/writeList.ts";
import { room, sheetNames } from "./bookTables.ts";
import { inSeason, lameOn, orSeeProblems, untilAsOf } from "./formulas.ts";
import { cureChart, type Drawn, type DrawnRanges, lameChart, lesionChart, newCaseChart } from "./pictureCharts.ts";

const keyRow = 3;
const chartRow = 5;
const chartRows = 17;
const figuresRow = chartRow + 2 * (chartRows + 1) + 3;
const lesionColumn = 7;
const cureRow = figuresRow + 16;
const watchRows = 400;
const cureRows = 384;
/** What the charts are drawn from stands right of the printed page. */
const helperColumn = 15;
const helperRow = 4;
const months = 12;
const lesionsDrawn = 8;
const daysDrawn = 42;

const monthOf = 'IF(Gathers[Date]="","",Gathers[Date]-DAY(Gathers[Date])+1)';

const latest = (column: string): string =>
  `IF(Gathers[Date]="","",IF(ISNUMBER(Gathers[Date])*(Gathers[Date]<=latest_gather-31),"",${column}))`;
const latestCounts = `${latest("Gathers[Lame]")},${latest("Gathers[Looked at]")}`;
// Sheep sold since the gather are no longer in the groups, so the flock is never smaller than what was looked at.
const flockNow = `IF(SUM(Groups[Sheep now])=0,"",MAX(SUM(Groups[Sheep now]),SUM(${latest("Gathers[Looked at]")})))`;
const ifGathered = (formula: string): string => `IF(LEN(latest_gather)=0,"no gathers yet",${orSeeProblems(formula)})`;

/** How the flock is doing, drawn; the same in figures on the second page. */
export const pictureSheet: SheetPlan = {
  name: sheetNames.picture,
  write(sheet, nameCell) {
    sheet.widths(12, 11, 11, 11, 11, 24, 3, 33, 10, 11, 12, 11, 11, 3, 3);
    sheet.title("Picture");
    writeKeyFigures(sheet);
    sheet.rowHeight(keyRow, 22);
    nameCell("latest_gather", sheetNames.picture, {
      top: helperRow,
      left: helperColumn,
      bottom: helperRow,
      right: helperColumn,
    });
    writeFigures(sheet);
    const drawn = writeHelpers(sheet);
    sheet.chart({ row: chartRow, column: 0 }, lameChart(drawn));
    sheet.chart({ row: chartRow, column: lesionColumn }, newCaseChart(drawn));
    sheet.chart({ row: chartRow + chartRows + 1, column: 0 }, lesionChart(drawn));
    sheet.chart({ row: chartRow + chartRows + 1, column: lesionColumn }, cureChart(drawn));
    sheet.newPageAtRow(figuresRow - 2);
    sheet.protect();
    // What the charts are drawn from is not printed, and not every spreadsheet takes a formula here.
    sheet.print({ sideways: true, cells: `$A$1:$M$${cureRow + 50}` });
  },
};

function writeKeyFigures(sheet: SheetAuthor): void {
  const figures = [
    {
      column: 0,
      label: "Share lame, last month of gathers",
      formula: `FOOT.FLOCKPREV(${latestCounts})`,
      look: "figureShare",
    },
    {
      column: 4,
      label: "Against the target",
      formula: `FOOT.TARGETCHECK(${latestCounts},target,0.95,${flockNow})`,
      look: "figure",
    },
    {
      column: lesionColumn,
      label: "Sound within 14 days of treatment",
      formula: `INDEX(FOOT.SOUNDBY(${treated},${soundOn},as_of,14,0.95,${leftOn}),1,1)`,
      look: "figureShare",
    },
  ] as const;
  for (const { column, label, formula, look } of figures) {
    sheet.put({ row: keyRow - 1, column }, label, "note");
    sheet.put(
      { row: keyRow, column },
      {
        formula:
          column === lesionColumn
            ? `IF(COUNT(Cases[Treated])=0,"no treatments yet",${orSeeProblems(formula)})`
            : ifGathered(formula),
      },
      look,
    );
  }
}

const treated = untilAsOf("Cases[Treated]");
const ofTreated = (column: string): string => `IF(${treated}="","",${untilAsOf(column)})`;
const soundOn = ofTreated("Cases[Sound on]");
const leftOn = ofTreated("Cases[Left flock]");

function writeFigures(sheet: SheetAuthor): void {
  const lists = [
    {
      question: "Share lame month by month, with the limits of chance",
      row: figuresRow,
      column: 0,
      rows: watchRows,
      gives: lameWatchFunction,
      formula: ifGathered(`FOOT.LAMEWATCH(${monthOf},Gathers[Lame],Gathers[Looked at])`),
      strong: `AND(LEN($F${figuresRow + 2})>0,ISNUMBER($B${figuresRow + 2}))`,
    },
    {
      question: "What made them lame, in the year looked at",
      row: figuresRow,
      column: lesionColumn,
      rows: 12,
      gives: lesionMixFunction,
      formula: `IF(SUM((LEN(${inSeason("Cases[Lesion]")})>0)*1)=0,"no cases in the year",${orSeeProblems(`FOOT.LESIONMIX(${inSeason("Cases[Lesion]")})`)})`,
    },
    {
      question: "How fast they get sound, days after treatment",
      row: cureRow,
      column: lesionColumn,
      rows: cureRows,
      gives: soundCurveFunction,
      formula: orSeeProblems(`FOOT.SOUNDCURVE(${treated},${soundOn},as_of,0.95,${leftOn})`),
    },
  ];
  for (const list of lists) {
    listLooks(list.gives).forEach((look, step) => {
      const column = list.column + step;
      sheet.dress({ top: list.row + 1, left: column, bottom: list.row + list.rows, right: column }, look);
    });
    writeList(sheet, list);
  }
}

/** Ranges of a fixed size for the charts, since a chart cannot follow a list that grows. #N/A leaves a gap in a line. */
function writeHelpers(sheet: SheetAuthor): DrawnRanges {
  const letters = (step: number): string => columnLetters(helperColumn + step);
  sheet.put({ row: 0, column: helperColumn }, "For the charts", "question");
  sheet.put(
    { row: 1, column: helperColumn },
    "Nothing to type here. #N/A is meant: it leaves a gap in a line.",
    "note",
  );
  sheet.put({ row: helperRow - 1, column: helperColumn }, "latest gather", "workedHeading");
  sheet.put(
    { row: helperRow, column: helperColumn },
    { formula: 'IF(COUNT(Gathers[Date])=0,"",MAX(Gathers[Date]))' },
    "workedDate",
  );

  const watch = `$A$${figuresRow + 2}:$E$${figuresRow + watchRows + 1}`;
  const first = `$${letters(21)}$${helperRow + 2}:$${letters(21)}$${helperRow + room.cases + 1}`;
  const headings = ["month", "label", "share lame", "usual", "low limit", "high limit", "target", "new cases"];
  sheet.putRow({ row: helperRow - 1, column: helperColumn + 1 }, headings, "workedHeading");
  for (let place = 0; place < months; place++) {
    const row = helperRow + place;
    const month = `$${letters(1)}${row + 1}`;
    const watched = (column: number): string => `IFERROR(VLOOKUP(${month},${watch},${column},FALSE),NA())`;
    sheet.put(
      { row, column: helperColumn + 1 },
      { formula: `EDATE(DATE(YEAR(as_of),MONTH(as_of),1),${place - months + 1})` },
      "workedMonth",
    );
    const names = '"Jan","Feb","Mar","Apr","May","Jun","Jul","Aug","Sep","Oct","Nov","Dec"';
    sheet.put(
      { row, column: helperColumn + 2 },
      { formula: `CHOOSE(MONTH(${month}),${names})&" "&RIGHT(YEAR(${month}),2)` },
      "worked",
    );
    [watched(2), watched(3), watched(4), watched(5), "target"].forEach((formula, step) => {
      sheet.put({ row, column: helperColumn + 3 + step }, { formula }, "workedShare");
    });
    sheet.put(
      { row, column: helperColumn + 8 },
      { formula: `COUNTIFS(${first},">="&${month},${first},"<"&EDATE(${month},1))` },
      "workedCount",
    );
  }

  sheet.putRow({ row: helperRow - 1, column: helperColumn + 10 }, ["lesion", "share of cases"], "workedHeading");
  const mix = (column: string) => `$${column}$${figuresRow + 2}:$${column}$${figuresRow + 13}`;
  for (let place = 1; place <= lesionsDrawn; place++) {
    const row = helperRow + place - 1;
    const there = `SUM(INDEX(${mix("I")},${place}))>0`;
    sheet.put({ row, column: helperColumn + 10 }, { formula: `IF(${there},INDEX(${mix("H")},${place}),"")` }, "worked");
    sheet.put(
      { row, column: helperColumn + 11 },
      { formula: `IF(${there},INDEX(${mix("J")},${place}),NA())` },
      "workedShare",
    );
  }

  sheet.putRow(
    { row: helperRow - 1, column: helperColumn + 12 },
    ["day", "still lame", "low", "high", "label", "line"],
    "workedHeading",
  );
  const curve = (column: string) => `$${column}$${cureRow + 2}:$${column}$${cureRow + cureRows + 1}`;
  for (let day = 0; day <= daysDrawn; day++) {
    const row = helperRow + day;
    sheet.put({ row, column: helperColumn + 12 }, day, "workedCount");
    // One spreadsheet writes a label under every day, however narrow.
    sheet.put({ row, column: helperColumn + 16 }, day % 7 === 0 ? day : null, "workedCount");
    // The line of the curve that holds on that day; past the last day watched there is none.
    const at = `$${letters(17)}$${row + 1}`;
    const onCurve = `IF(MAX(${curve("H")})<${day},"",IFERROR(MATCH(${day},${curve("H")},1),""))`;
    sheet.put({ row, column: helperColumn + 17 }, { formula: onCurve }, "workedCount");
    ["K", "L", "M"].forEach((column, step) => {
      const value = `INDEX(${curve(column)},${at})`;
      // Where the method has no limits, before the first is sound, their lines lie on the curve.
      const shown = step === 0 ? value : `IF(ISNUMBER(${value}),${value},INDEX(${curve("K")},${at}))`;
      sheet.put(
        { row, column: helperColumn + 13 + step },
        { formula: `IF(LEN(${at})=0,NA(),${shown})` },
        "workedShare",
      );
    });
  }

  listLooks(caseTableFunction).forEach((look, step) => {
    sheet.columnLook(helperColumn + 19 + step, helperColumn + 19 + step, look);
  });
  writeList(sheet, {
    question: "Cases",
    row: helperRow,
    column: helperColumn + 19,
    rows: 1,
    gives: caseTableFunction,
    formula: orSeeProblems(`FOOT.CASETABLE(Cases[Tag],${lameOn},gap_days)`),
  });
  const range = (step: number, rows: number): Drawn => {
    const on = `${quoteSheet(sheetNames.picture)}$${letters(step)}$`;
    return { name: `${on}${helperRow}`, cells: `${on}${helperRow + 1}:$${letters(step)}$${helperRow + rows}` };
  };
  return {
    month: range(2, months),
    share: range(3, months),
    usual: range(4, months),
    low: range(5, months),
    high: range(6, months),
    target: range(7, months),
    newCases: range(8, months),
    lesion: range(10, lesionsDrawn),
    lesionShare: range(11, lesionsDrawn),
    day: range(16, daysDrawn + 1),
    stillLame: range(13, daysDrawn + 1),
    stillLow: range(14, daysDrawn + 1),
    stillHigh: range(15, daysDrawn + 1),
  };
}
