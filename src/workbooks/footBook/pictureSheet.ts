import type { SheetPlan } from "../writing/authorWorkbook.ts";
import { writeList } from "../writing/placeList.ts";
import type { SheetAuthor } from "../writing/sheetAuthor.ts";
import { sheetNames } from "./bookSheets.ts";
import { inSeason, orSeeProblems, untilAsOf } from "./formulas.ts";
import { cureChart, lameChart, lesionChart, newCaseChart } from "./pictureCharts.ts";
import {
  cure,
  cureRow,
  drawn,
  figuresRow,
  lesionColumn,
  lesionMix,
  rows,
  watch,
  writeDrawn,
} from "./pictureFigures.ts";

const keyRow = 3;
const chartRow = 5;
const chartRows = 17;

const monthOf = 'IF(Gathers[Date]="","",Gathers[Date]-DAY(Gathers[Date])+1)';

const latest = (column: string): string =>
  `IF(Gathers[Date]="","",IF(ISNUMBER(Gathers[Date])*(Gathers[Date]<=latest_gather-31),"",${column}))`;
const latestCounts = `${latest("Gathers[Lame]")},${latest("Gathers[Looked at]")}`;
// Sheep sold since the gather are no longer in the groups, so the flock is never smaller than what was looked at.
const flockNow = `IF(SUM(Groups[Sheep now])=0,"",MAX(SUM(Groups[Sheep now]),SUM(${latest("Gathers[Looked at]")})))`;
const ifGathered = (formula: string): string => `IF(LEN(latest_gather)=0,"no gathers yet",${orSeeProblems(formula)})`;

const treated = untilAsOf("Cases[Treated]");
const ofTreated = (column: string): string => `IF(${treated}="","",${untilAsOf(column)})`;
const soundOn = ofTreated("Cases[Sound on]");
const leftOn = ofTreated("Cases[Left flock]");

/** How the flock is doing, drawn; the same in figures on the second page. */
export const pictureSheet: SheetPlan = {
  name: sheetNames.picture,
  write(sheet, nameCell) {
    sheet.widths(12, 11, 11, 11, 11, 24, 3, 33, 10, 11, 12, 11, 11, 3, 3);
    sheet.title("Picture");
    writeKeyFigures(sheet);
    sheet.rowHeight(keyRow, 22);
    nameCell("latest_gather", sheetNames.picture, drawn.latest.at("latest", 0));
    writeFigures(sheet);
    writeDrawn(sheet);
    sheet.chart({ row: chartRow, column: 0 }, lameChart);
    sheet.chart({ row: chartRow, column: lesionColumn }, newCaseChart);
    sheet.chart({ row: chartRow + chartRows + 1, column: 0 }, lesionChart);
    sheet.chart({ row: chartRow + chartRows + 1, column: lesionColumn }, cureChart);
    sheet.newPageAtRow(figuresRow - 2);
    sheet.protect();
    // What the charts are drawn from is not printed, and not every spreadsheet takes a formula here.
    sheet.print({ sideways: true, upTo: { row: cureRow + 49, column: 12 } });
  },
};

function writeKeyFigures(sheet: SheetAuthor): void {
  const figures = [
    {
      column: 0,
      label: "Share lame, last month of gathers",
      formula: ifGathered(`FOOT.FLOCKPREV(${latestCounts})`),
      look: "figureShare",
    },
    {
      column: 4,
      label: "Against the target",
      formula: ifGathered(`FOOT.TARGETCHECK(${latestCounts},target,0.95,${flockNow})`),
      look: "figure",
    },
    {
      column: lesionColumn,
      label: "Sound within 14 days of treatment",
      formula: `IF(COUNT(Cases[Treated])=0,"no treatments yet",${orSeeProblems(
        `INDEX(FOOT.SOUNDBY(${treated},${soundOn},as_of,14,0.95,${leftOn}),1,1)`,
      )})`,
      look: "figureShare",
    },
  ] as const;
  for (const { column, label, formula, look } of figures) {
    sheet.put({ row: keyRow - 1, column }, label, "note");
    sheet.put({ row: keyRow, column }, { formula }, look);
  }
}

function writeFigures(sheet: SheetAuthor): void {
  const lesions = inSeason("Cases[Lesion]");
  writeList(sheet, watch, {
    question: "Share lame month by month, with the limits of chance",
    rows: rows.watch,
    dress: "rows",
    formula: ifGathered(`FOOT.LAMEWATCH(${monthOf},Gathers[Lame],Gathers[Looked at])`),
    strong: (cell) => `AND(LEN(${cell("signal")})>0,ISNUMBER(${cell("share")}))`,
  });
  writeList(sheet, lesionMix, {
    question: "What made them lame, in the year looked at",
    rows: rows.lesions,
    dress: "rows",
    formula: `IF(SUM((LEN(${lesions})>0)*1)=0,"no cases in the year",${orSeeProblems(`FOOT.LESIONMIX(${lesions})`)})`,
  });
  writeList(sheet, cure, {
    question: "How fast they get sound, days after treatment",
    rows: rows.cure,
    dress: "rows",
    formula: orSeeProblems(`FOOT.SOUNDCURVE(${treated},${soundOn},as_of,0.95,${leftOn})`),
  });
}
