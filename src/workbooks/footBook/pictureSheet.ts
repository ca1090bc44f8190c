import type { SheetPlan } from "../writing/authorWorkbook.ts";
import { sayWhenMissing } from "../writing/missingFunctions.ts";
import { orWords } from "../writing/orWords.ts";
import { writeList } from "../writing/placeList.ts";
import { sayWhenCut } from "../writing/printedLists.ts";
import { fixedCell } from "../writing/references.ts";
import type { SheetAuthor } from "../writing/sheetAuthor.ts";
import { sheetNames } from "./bookSheets.ts";
import { lookingBack } from "./formulas.ts";
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
/** So that the figures fill a page and no more; where a list has its whole room from the start, its blank rows are printed too. */
const printedDays = { excel: 49, libreoffice: 28 } as const;

const noGathers = ["LEN(latest_month)=0", "no gathers yet"] as const;
/** What a key figure says that a bad record keeps from being worked out; the line below it says where to look. */
const notKnown = "not known";
/** Where the share is not worked out, the target has the same words. */
const shareCell = fixedCell({ row: keyRow, column: 0 });
const ifGathered = (formula: string): string => `IF(${noGathers[0]},"${noGathers[1]}",${formula})`;

const ofFollowed = (column: string): string => `IF(LEN(followed_on)>0,${column},"")`;
const watched = `followed_on,${ofFollowed("sound_on")}`;
// The day on which she was found sound is taken as it was written down. One that was not is known to have been lame up to
// the last look at her; where nobody wrote one down she counts as lame up to now, since a blank is no sound sheep.
const stillLame = "LEN(followed_on)*(LEN(sound_on)+LEN(left_on)=0)";
const watchedEnd = `${ofFollowed("left_on")},IF(${stillLame},IF(LEN(looked_on)>0,looked_on,as_of),"")`;

/** How the flock is doing, drawn; the same in figures on the second page. */
export const pictureSheet: SheetPlan = {
  name: sheetNames.picture,
  write(sheet, nameCell) {
    sheet.widths(12, 11, 11, 11, 11, 24, 3, 33, 10, 11, 12, 11, 11, 3, 3);
    sheet.title("Picture");
    sayWhenMissing(sheet, { row: 0, column: 4 });
    sheet.put({ row: 1, column: 0 }, { formula: lookingBack, array: true }, "strong");
    writeKeyFigures(sheet);
    // What is not settled is told in a sentence.
    sheet.merge({ top: keyRow, left: 4, bottom: keyRow, right: lesionColumn - 1 });
    sheet.rowHeight(keyRow, 46);
    const leftOut = (column: string): string => `COUNTIF(${column},"*left out*")`;
    sheet.put(
      { row: keyRow + 1, column: 0 },
      {
        formula: `IF(${shareCell}="${notKnown}","A gather of the last month cannot be read: see Problems.",IF(${leftOut(watch.range("date", rows.watch))}+${leftOut(cure.range("day", rows.cure))}>0,"Rows that cannot be read are left out here: see Problems.",""))`,
      },
      "careHeading",
    );
    ["latest_month", "each_seen_once", "flock_then"].forEach((name, index) => {
      nameCell(name, sheetNames.picture, drawn.latest.at("latestMonth", index));
    });
    writeFigures(sheet);
    writeDrawn(sheet);
    sheet.chart({ row: chartRow, column: 0 }, lameChart);
    sheet.chart({ row: chartRow, column: lesionColumn }, newCaseChart);
    sheet.chart({ row: chartRow + chartRows + 1, column: 0 }, lesionChart);
    sheet.chart({ row: chartRow + chartRows + 1, column: lesionColumn }, cureChart);
    sheet.newPageAtRow(figuresRow - 2);
    sheet.protect();
    // What the charts are drawn from is not printed, and not every spreadsheet takes a formula here.
    const lastRow = cureRow + printedDays[sheet.edition];
    for (const list of [watch, cure]) sayWhenCut(sheet, list, lastRow);
    sheet.print({ sideways: true, upTo: { row: lastRow, column: 12 } });
  },
};

function writeKeyFigures(sheet: SheetAuthor): void {
  const figures = [
    {
      column: 0,
      label: "Share lame, last month of gathers",
      formula: ifGathered(orWords("FOOT.FLOCKPREV(month_lame,month_looked_at)", notKnown)),
      look: "figureShare",
    },
    {
      column: 4,
      label: "Against the target",
      // Sheep that were looked at twice are not twice as many sheep.
      formula: `IF(ISNUMBER(${shareCell}),IF(flock_then=0,FOOT.TARGETCHECK(month_lame,month_looked_at,target),IF(each_seen_once,FOOT.TARGETCHECK(month_lame,month_looked_at,target,0.95,flock_then),"a group gathered twice, or not in Settings")),${shareCell})`,
      look: "figureWords",
    },
    {
      column: lesionColumn,
      label: "Sound within 14 days of treatment",
      formula: `IFNA(INDEX(FOOT.SOUNDBY(${watched},as_of,14,0.95,${watchedEnd}),1,1),"not known yet")`,
      look: "figureShare",
    },
  ] as const;
  for (const { column, label, formula, look } of figures) {
    sheet.put({ row: keyRow - 1, column }, label, "note");
    sheet.put({ row: keyRow, column }, { formula }, look);
  }
}

function writeFigures(sheet: SheetAuthor): void {
  writeList(sheet, watch, {
    question: "Share lame month by month, with the limits of chance",
    rows: rows.watch,
    dress: "rows",
    unless: noGathers,
    formula: "FOOT.LAMEWATCH(gather_month,gather_lame,gather_looked_at)",
    strong: (cell) => `AND(LEN(${cell("signal")})>0,ISNUMBER(${cell("share")}))`,
  });
  writeList(sheet, lesionMix, {
    question: "What made them lame, in the year looked at",
    rows: rows.lesions,
    dress: "rows",
    unless: ["SUM((LEN(case_lesion)>0)*1)=0", "no cases in the year"],
    formula: "FOOT.LESIONMIX(case_lesion)",
  });
  writeList(sheet, cure, {
    question: "How fast they get sound, days after treatment",
    rows: rows.cure,
    dress: "rows",
    formula: `FOOT.SOUNDCURVE(${watched},as_of,0.95,${watchedEnd})`,
  });
}
