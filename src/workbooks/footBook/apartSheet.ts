import { keepApartFunction } from "../../../functions/animals/keepApart.ts";
import type { SheetPlan } from "../writing/authorWorkbook.ts";
import { listLooks, writeList } from "../writing/writeList.ts";
import type { BookContent } from "./bookContent.ts";
import { room, sheetNames } from "./bookTables.ts";
import { lameOn, orSeeProblems } from "./formulas.ts";

const headings = 6;
const rows = 1000;

/** Whom to keep apart when sheep are housed, turned out or weaned. */
export const apartSheet = ({ eventDate }: BookContent): SheetPlan => ({
  name: sheetNames.apart,
  write(sheet, nameCell) {
    listLooks(keepApartFunction).forEach((look, step) => {
      sheet.columnLook(step, step, look);
    });
    sheet.widths(26, 72, 16);
    sheet.dress({ top: 0, left: 0, bottom: headings - 1, right: 2 }, "note");
    sheet.title("Keep apart");
    sheet.put(
      { row: 1, column: 0 },
      "At housing, turnout or weaning, sheep that are lame or only just sound stay by themselves.",
    );
    sheet.put({ row: 2, column: 0 }, "Day of the event", "strong");
    const cell = { top: 2, left: 1, bottom: 2, right: 1 };
    sheet.put({ row: 2, column: 1 }, eventDate ?? { formula: "as_of" }, "fieldDate");
    nameCell("event_date", sheetNames.apart, cell);
    sheet.accept(cell, {
      of: { date: ["DATE(1990,1,1)", "DATE(2100,12,31)"] },
      words: "Type a date, such as 2026-03-14.",
    });
    const [n, last] = [headings + 2, headings + rows + 1];
    sheet.put(
      { row: 3, column: 0 },
      {
        formula: `COUNT($C$${n}:$C$${last})&" animals; sound for fewer than "&settle_days&" days counts as not settled (Settings)"`,
      },
      "strong",
    );
    writeList(sheet, {
      question: "Keep these apart",
      row: headings,
      column: 0,
      rows,
      longest: room.cases,
      gives: keepApartFunction,
      formula: orSeeProblems(
        `FOOT.KEEPAPART(event_date,Cases[Tag],${lameOn},"lame",settle_days,Cases[Sound on],Cases[Left flock])`,
      ),
      strong: `LEFT($B${n},4)="lame"`,
    });
    sheet.freezeAt({ row: headings + 1, column: 0 });
    sheet.protect();
    sheet.print({
      repeat: [headings, headings],
    });
  },
});
