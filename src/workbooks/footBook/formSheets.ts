import { feetWords } from "../tables/recordWords.ts";
import type { SheetPlan } from "../writing/authorWorkbook.ts";
import { sheetNames } from "./bookSheets.ts";

interface Form {
  readonly name: string;
  readonly words: string;
  /** In the order of the sheet that they are typed into; headings of their own, so that no form passes for records. */
  readonly columns: readonly (readonly [heading: string, width: number])[];
  readonly rows: number;
  readonly sideways: boolean;
}

const headingRow = 4;

/** A form to print blank and fill with a pen. */
const formSheet = ({ name, words, columns, rows, sideways }: Form): SheetPlan => ({
  name,
  write(sheet) {
    sheet.widths(...columns.map(([, width]) => width));
    sheet.title(name);
    sheet.put({ row: 1, column: 0 }, { formula: 'IF(farm_name="","Farm:",farm_name)' }, "subtitle");
    sheet.put({ row: 2, column: 0 }, words, "note");
    columns.forEach(([heading], column) => {
      sheet.put({ row: headingRow, column }, `${heading}`, "workedHeading");
    });
    sheet.rowHeight(headingRow, 32);
    const [top, bottom, right] = [headingRow + 1, headingRow + rows, columns.length - 1];
    sheet.dress({ top, left: 0, bottom, right }, "penned");
    for (let row = top; row <= bottom; row++) sheet.rowHeight(row, sideways ? 32 : 23);
    sheet.protect();
    sheet.print({ sideways, upTo: { row: bottom, column: right }, onOnePage: true });
  },
});

export const gatherForm = formSheet({
  name: sheetNames.gatherForm,
  words: "One line for each group. Count every sheep that was looked at, and how many of them were lame.",
  columns: [
    ["Day", 15],
    ["Which group", 26],
    ["Sheep looked at", 12],
    ["Of them lame", 12],
    ["What was seen", 32],
  ],
  rows: 28,
  sideways: false,
});

export const caseForm = formSheet({
  name: sheetNames.caseForm,
  words: `One line for each treatment: of one animal, or of a whole group with how many they were. Feet: ${feetWords.join(", ")}. Withdrawal days from the data sheet or the vet; a blank is not 0.`,
  columns: [
    ["Lame on", 11],
    ["Treated on", 11],
    ["Tag number", 20],
    ["Of group", 13],
    ["How many", 9],
    ["Feet", 7],
    ["What it is", 16],
    ["Score 0 to 6", 8],
    ["What was done", 16],
    ["Which medicine", 14],
    ["ml given", 8],
    ["Days of withdrawal", 11],
    ["By whom", 10],
    ["Batch number", 11],
    ["Seen again on", 11],
    ["Sound from", 11],
  ],
  rows: 20,
  sideways: true,
});
