import { cautions } from "../../../functions/cautions.ts";
import type { SheetPlan } from "../authoring/authorWorkbook.ts";
import type { BookContent } from "./bookContent.ts";
import { sheetNames } from "./bookTables.ts";

const steps: readonly (readonly [sheet: string, words: string])[] = [
  [sheetNames.settings, "Once: your groups, your target, your medicines with the numbers from the data sheet."],
  [sheetNames.gathers, "At each gather: how many of each group were looked at, how many of them were lame."],
  [
    sheetNames.cases,
    "For each lame animal: when, which foot, what it was, what was done, and when she was sound again.",
  ],
  [
    sheetNames.today,
    "Read it in the morning: who may not go for food yet, whom to look at again, who is lame again and again.",
  ],
  [sheetNames.sale, "Before a sale: paste the tags and see who is clear and who must wait."],
  [sheetNames.apart, "Before housing, turnout or weaning: whom to keep by themselves."],
  [sheetNames.picture, "Once a month: is it getting better, what makes them lame, how fast do they get sound."],
  [sheetNames.medicine, "Once a year, or when your vet asks: how much medicine was used."],
  [sheetNames.problems, "Now and then: slips of the hand in the records, row by row, and how to mend them."],
];

const notInstalled =
  "Not installed here. The numbers are those that were saved last, and a list may be gone. Install Soundfold for your spreadsheet, or work the book out with: soundfold recalc";

const care = [cautions.withdrawal.words, cautions.medicineUse.words, cautions.recordCheck.words];

const notes = [
  "Dates: type real dates, or text such as 2026-03-14. Anything else is refused, because 03/04 means two days. A blank is never counted as a sound sheep, and a missing withdrawal period is never taken as 0 days.",
  "Cells that are worked out are locked so that nobody types over them. There is no password: take the protection off when you want to change the book.",
  "In LibreOffice a list keeps the length it was saved with. Work the book out with soundfold recalc after adding records, or use Excel, where lists grow by themselves.",
];

const lineHeight = 15.5;
/** Letters that fit in a line of the column of words, in a wide font. */
const lineLength = 96;
const heightOf = (words: string): number => Math.ceil(words.length / lineLength) * lineHeight + 3;

/** What this book is, how to fill it, whether the functions answer here, and what to take care of. */
export const startSheet = ({ invented }: BookContent): SheetPlan => ({
  name: sheetNames.start,
  write(sheet) {
    sheet.widths(18, 92);
    sheet.hideGrid();
    sheet.put({ row: 0, column: 0 }, "Flock foot book", "title");
    sheet.rowHeight(0, 30);
    sheet.put(
      { row: 1, column: 0 },
      { formula: 'IF(farm_name="","Sheep foot health, for the farm office",farm_name)' },
      "subtitle",
    );
    let row = 2;
    if (invented) {
      sheet.put({ row, column: 0 }, "This flock is invented. No animal, farm or medicine in it exists.", "strong");
      row++;
    }
    row++;
    const state: readonly (readonly [string, string])[] = [
      ["Functions", `IFERROR(FOOT.ABOUT(),"${notInstalled}")`],
      [
        "Records",
        'IF(ISNUMBER(problems_found),IF(problems_found=0,"Nothing to mend was found.",problems_found&" things to look at: see the sheet Problems."),"Not worked out here.")',
      ],
    ];
    for (const [label, formula] of state) {
      sheet.put({ row, column: 0 }, label, "strong");
      sheet.put({ row, column: 1 }, { formula }, "words");
      sheet.rowHeight(row, 2 * lineHeight);
      row++;
    }
    row++;
    sheet.put({ row, column: 0 }, "The sheets, in the order of the work", "question");
    for (const [name, words] of steps) {
      row++;
      sheet.put({ row, column: 0 }, name, "link");
      sheet.linkTo({ row, column: 0 }, name);
      sheet.put({ row, column: 1 }, words, "words");
    }
    row += 2;
    sheet.put({ row, column: 0 }, "Take care", "question");
    for (const words of care) {
      row++;
      sheet.put({ row, column: 1 }, words, "care");
      sheet.rowHeight(row, heightOf(words));
    }
    row += 2;
    sheet.put({ row, column: 0 }, "Good to know", "question");
    for (const words of notes) {
      row++;
      sheet.put({ row, column: 1 }, words, "words");
      sheet.rowHeight(row, heightOf(words));
    }
    sheet.protect();
    sheet.print({ cells: `$A$1:$B$${row + 1}`, onOnePage: true });
  },
});
