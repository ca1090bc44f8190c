import type { Cell } from "../../cells/cell.ts";
import { lesions } from "../../core/words/lesionName.ts";
import type { Place } from "../../workbook/address.ts";
import type { Table } from "../tables/defineTable.ts";
import { feetWords, lesionWords, treatmentWords } from "../tables/recordWords.ts";
import { groups, medicines, people, sheep, treatments } from "../tables/settingsTables.ts";
import type { SheetPlan } from "../writing/authorWorkbook.ts";
import { dateField, daysField, numberField, shareField, textField } from "../writing/fields.ts";
import { placeTable, writeTable } from "../writing/placeTable.ts";
import { filledCells } from "../writing/references.ts";
import type { NameCell, SheetAuthor } from "../writing/sheetAuthor.ts";
import { type Field, writeFields } from "../writing/writeFields.ts";
import type { BookContent } from "./bookContent.ts";
import { sheetNames } from "./bookSheets.ts";
import { bookVersion } from "./bookVersion.ts";

const settingsFor = (content: BookContent): readonly Field[] => [
  textField("farm_name", "Farm", content.farm, "Names the book, and the flock when books are compared."),
  dateField(
    "as_of",
    "Worked out for",
    content.asOf ?? { formula: "TODAY()" },
    "TODAY() follows the calendar; type a date to look back.",
  ),
  dateField(
    "year_from",
    "Year looked at, from",
    { formula: "EDATE(as_of,-12)+1" },
    "Repeat animals, lesions and medicine use count from here.",
  ),
  shareField("target", "Target", content.target, "The share lame you aim to stay below."),
  numberField(
    "lame_from",
    "Lowest score called lame",
    content.lameFrom,
    "On your scale of scores; count every sheep from it up as lame.",
    { of: { whole: ["0", "6"] }, words: "Type a score, 0 to 6." },
  ),
  daysField(
    "recheck_days",
    "Look again after",
    7,
    "Days from treatment to the second look, unless a case says another day.",
  ),
  daysField("ahead_days", "List looks due within", 7, "Days ahead that the sheet Today lists."),
  daysField("gap_days", "Gap between cases", 14, "Records of one animal at most so many days apart are one case."),
  numberField("repeat_from", "Repeat animal from", 2, "Cases in the year that put an animal on the list.", {
    of: { whole: ["1", "99"] },
    words: "Type a whole number of cases, 1 or more.",
  }),
  daysField("settle_days", "Sound for", 7, "Days an animal must have been sound before it joins the others."),
  numberField(
    "breeding_sheep",
    "Breeding sheep",
    content.breedingSheep,
    "For medicine use: breeding sheep on the farm.",
    sheep,
  ),
  numberField(
    "slaughter_lambs",
    "Lambs to slaughter",
    content.slaughterLambs,
    "For medicine use: lambs sent to slaughter in the year, not those sold to be fattened.",
    sheep,
  ),
  {
    name: "book_version",
    label: "Version of this book",
    value: bookVersion,
    look: "workedCount",
    words: "How a later book knows what it brings over from this one.",
  },
];

const firstSetting = 3;
const groupsRow = 18;
const medicinesRow = groupsRow + groups.room + 4;

const medicineWords =
  "Type your own from the data sheet. Nothing is filled in for you, because a wrong number here is a wrong number everywhere.";
const inventedWords =
  "INVENTED: these medicines and all their numbers are made up. Clear them before you use this book.";

/** What the book depends on and a person may change: one yellow cell each, with a name that formulas use. */
export const settingsSheet = (content: BookContent): SheetPlan => ({
  name: sheetNames.settings,
  write(sheet, nameCell) {
    sheet.widths(28, 18, 15, 18, 15, 22, 3, 20, 8);
    sheet.title("Settings");
    sheet.put({ row: 1, column: 0 }, "Yellow cells are yours to fill. Everything else follows.", "note");
    const fields = settingsFor(content).map((field) => ({
      ...field,
      value: content.settings?.get(field.name) ?? field.value,
    }));
    writeFields(sheet, nameCell, firstSetting, fields);
    const at = (column: number) => ({ row: groupsRow, column });
    writeListed(sheet, nameCell, groups, at(0), content.groups, { title: "Groups", key: "group", name: "group_list" });
    const givenBy = content.givenBy.map((name) => ({ givenBy: name }));
    writeListed(sheet, nameCell, people, at(3), givenBy, {
      title: "Who treats",
      key: "givenBy",
      name: "given_by_list",
    });
    const own = content.treatments ?? [];
    const usual = (own.length > 0 ? own : treatmentWords).map((treatment) => ({ treatment }));
    writeListed(sheet, nameCell, treatments, at(5), usual, {
      title: "Treatments",
      key: "treatment",
      name: "treatment_list",
    });
    const lesionNames = lesions.map((lesion) => lesionWords[lesion]);
    writeFixed(sheet, nameCell, at(7), { heading: "Lesions", words: lesionNames, name: "lesion_list" });
    writeFixed(sheet, nameCell, at(8), { heading: "Feet", words: feetWords, name: "foot_list" });
    const care = content.invented ? inventedWords : medicineWords;
    sheet.put({ row: medicinesRow - 1, column: 0 }, care, "careHeading");
    writeListed(sheet, nameCell, medicines, { row: medicinesRow, column: 0 }, content.medicines, {
      title: "Medicines",
      titleRow: medicinesRow - 2,
      key: "medicine",
      name: "medicine_list",
    });
    sheet.protect();
    sheet.print({ upTo: { row: medicinesRow + medicines.room, column: 5 }, onOnePage: true });
  },
});

interface Listed<K extends string> {
  readonly title: string;
  readonly titleRow?: number;
  /** The column that what is typed elsewhere is chosen from. */
  readonly key: K;
  readonly name: string;
}

/** A table of the settings; one of its columns is a list for the records. */
function writeListed<K extends string>(
  sheet: SheetAuthor,
  nameCell: NameCell,
  table: Table<K>,
  at: Place,
  records: readonly Readonly<Partial<Record<K, Cell | undefined>>>[],
  { title, titleRow = at.row - 1, key, name }: Listed<K>,
): void {
  sheet.put({ row: titleRow, column: at.column }, title, "question");
  const placed = placeTable(sheet.name, table, at);
  writeTable(sheet, table, placed, records);
  nameCell(name, sheet.name, { formula: filledCells(sheet.name, placed.column(key)) });
}

/** A list of words that the functions know; nothing is typed there. */
function writeFixed(
  sheet: SheetAuthor,
  nameCell: NameCell,
  { row, column }: Place,
  { heading, words, name }: { readonly heading: string; readonly words: readonly string[]; readonly name: string },
): void {
  sheet.put({ row, column }, heading, "workedHeading");
  words.forEach((word, index) => {
    sheet.put({ row: row + 1 + index, column }, word, "worked");
  });
  nameCell(name, sheet.name, { top: row + 1, left: column, bottom: row + words.length, right: column });
}
