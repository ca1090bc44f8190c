import type { Edition } from "./edition.ts";
import type { SheetAuthor } from "./sheetAuthor.ts";

/** What the first sheet of a workbook says. */
export interface StartWords {
  readonly title: string;
  /** Without `=`. */
  readonly subtitle: string;
  /** Said of a workbook whose records are invented. */
  readonly invented: string | undefined;
  /** What the workbook tells of itself, as formulas without `=`, beside whether the functions answer here. */
  readonly states: readonly (readonly [label: string, formula: string])[];
  readonly steps: readonly (readonly [sheet: string, words: string])[];
  readonly care: readonly string[];
  readonly notes: readonly string[];
  /** Whether no cell of the workbook needs the functions. */
  readonly valuesOnly?: boolean;
  /** Whether it is made for each spreadsheet in an edition of its own. */
  readonly hasEditions?: boolean;
}

const notInstalled =
  "Where the functions are not installed: Excel shows the answers that were saved last until something is worked out again, and then #NAME? in their place; other spreadsheets show #NAME? at once. Get Soundfold for your spreadsheet from whoever sent you this file, or type: soundfold recalc and the name of the file.";

const functionsState = ["Functions", `IFERROR(FOOT.ABOUT(),"Not installed here: see Good to know, below.")`] as const;

const editionNotes: Readonly<Record<Edition, string>> = {
  excel:
    "In LibreOffice a list keeps the length it was saved with: use the edition for LibreOffice there (soundfold template, --for libreoffice).",
  libreoffice:
    "This is the edition for LibreOffice, with the Soundfold extension: each list has its room from the start, and its last row says how many lines more there are. In Excel use the other edition.",
};

const noEditionNote =
  "In LibreOffice a list keeps the length it was saved with. This workbook shows what the functions make of records; the empty ones to start from have an edition for LibreOffice (soundfold template, --for libreoffice).";

const lineHeight = 15.5;
/** Letters that fit in a line of the column of words, in a wide font. */
const lineLength = 96;
const heightOf = (words: string): number => Math.ceil(words.length / lineLength) * lineHeight + 3;

/** Writes the first sheet: what the workbook is, whether the functions answer here, the sheets in order, and care. */
export function writeStart(sheet: SheetAuthor, words: StartWords): void {
  sheet.widths(18, 92);
  sheet.title(words.title);
  sheet.put({ row: 1, column: 0 }, { formula: words.subtitle }, "subtitle");
  if (words.invented !== undefined) sheet.put({ row: 2, column: 0 }, words.invented, "strong");
  let row = words.invented === undefined ? 3 : 4;
  const { valuesOnly = false, hasEditions = true } = words;
  for (const [label, formula] of [...(valuesOnly ? [] : [functionsState]), ...words.states]) {
    sheet.put({ row, column: 0 }, label, "strong");
    sheet.put({ row, column: 1 }, { formula }, "words");
    sheet.rowHeight(row, 2 * lineHeight);
    row++;
  }
  row++;
  sheet.put({ row, column: 0 }, "The sheets, in the order of the work", "question");
  for (const [name, about] of words.steps) {
    row++;
    sheet.put({ row, column: 0 }, name, "link");
    sheet.linkTo({ row, column: 0 }, name);
    sheet.put({ row, column: 1 }, about, "words");
    sheet.rowHeight(row, heightOf(about));
  }
  for (const [question, lines, look] of [
    ["Take care", words.care, "care"],
    [
      "Good to know",
      [
        ...words.notes,
        ...(valuesOnly ? [] : [hasEditions ? editionNotes[sheet.edition] : noEditionNote, notInstalled]),
      ],
      "words",
    ],
  ] as const) {
    row += 2;
    sheet.put({ row, column: 0 }, question, "question");
    for (const line of lines) {
      row++;
      sheet.put({ row, column: 1 }, line, look);
      sheet.rowHeight(row, heightOf(line));
    }
  }
  sheet.protect();
  sheet.print({ upTo: { row, column: 1 }, onOnePage: true });
}
