import { keepApartFunction } from "../../../functions/animals/keepApart.ts";
import { cases } from "../tables/cases.ts";
import type { SheetPlan } from "../writing/authorWorkbook.ts";
import { filledIn } from "../writing/filledIn.ts";
import { sayWhenMissing } from "../writing/missingFunctions.ts";
import { dressColumns, placeList, summaryOf, writeList } from "../writing/placeList.ts";
import { printedLists } from "../writing/printedLists.ts";
import { oneCell } from "../writing/references.ts";
import { rules } from "../writing/rules.ts";
import type { BookContent } from "./bookContent.ts";
import { sheetNames } from "./bookSheets.ts";

const headings = 6;
const rows = 1000;
/** A page of them. */
const printed = 60;
const apart = placeList(sheetNames.apart, keepApartFunction, { row: headings, column: 0 });
const day = { row: 2, column: 1 };

/** Whom to keep apart when sheep are housed, turned out or weaned. */
export const apartSheet = ({ eventDate }: BookContent): SheetPlan => ({
  name: sheetNames.apart,
  write(sheet, nameCell) {
    dressColumns(sheet, apart);
    sheet.widths(26, 72, 16);
    sheet.dress({ top: 0, left: 0, bottom: headings - 1, right: 2 }, "note");
    sheet.title("Keep apart");
    sayWhenMissing(sheet, { row: 0, column: 1 });
    sheet.put(
      { row: 1, column: 0 },
      "At housing, turnout or weaning, sheep that are lame or only just sound stay by themselves.",
    );
    sheet.put({ row: 2, column: 0 }, "Day of the event", "strong");
    sheet.put(day, eventDate ?? { formula: "as_of" }, "fieldDate");
    nameCell("event_date", sheetNames.apart, day);
    sheet.accept(oneCell(day), rules.day);
    sheet.put(
      { row: 3, column: 0 },
      {
        formula: summaryOf(sheet.edition, apart, {
          filled: "why",
          numbers: `${filledIn(apart.range("why", cases.room))}&" animals; sound for fewer than "&settle_days&" days counts as not settled (Settings)"`,
          room: rows,
        }),
      },
      "strong",
    );
    writeList(sheet, apart, {
      question: "Keep these apart",
      rows,
      formula: 'FOOT.KEEPAPART(event_date,case_tag,case_day,"lame",settle_days,sound_on,left_on)',
      strong: (cell) => `(LEFT(${cell("why")},4)="lame")+(LEFT(${cell("why")},9)="not known")`,
    });
    sheet.freezeAt({ row: headings + 1, column: 0 });
    sheet.protect();
    const upTo = printedLists(sheet, [apart], printed);
    sheet.print({ repeat: [headings, headings], ...(upTo && { upTo }) });
  },
});
