import { lesions } from "../../core/lesions/lesionName.ts";
import { columnLetters } from "../../workbook/address.ts";
import { quoteSheet } from "../../workbook/formula/structured.ts";
import type { SheetPlan } from "../writing/authorWorkbook.ts";
import type { Look } from "../writing/looks.ts";
import { rules } from "../writing/rules.ts";
import type { NameCell, Rule, SheetAuthor } from "../writing/sheetAuthor.ts";
import { type Field, writeFields } from "../writing/writeFields.ts";
import { writeHeadings } from "../writing/writeHeadings.ts";
import type { BookContent } from "./bookContent.ts";
import {
  feetWords,
  groupHeadings,
  lesionWords,
  medicineHeadings,
  room,
  sheetNames,
  treatmentWords,
} from "./bookTables.ts";

const days: Rule = { of: { whole: ["0", "365"] }, words: "Type a whole number of days, 0 to 365." };
const sheep: Rule = { of: { whole: ["0", "100000"] }, words: "Type a whole number of sheep." };
const settingsFor = (content: BookContent): readonly Field[] => [
  {
    name: "farm_name",
    label: "Farm",
    value: content.farm ?? null,
    look: "fieldText",
    words: "Names the book, and the flock when books are compared.",
  },
  {
    name: "as_of",
    label: "Worked out for",
    value: content.asOf ?? { formula: "TODAY()" },
    look: "fieldDate",
    words: "TODAY() follows the calendar; type a date to look back.",
    rule: rules.day,
  },
  {
    name: "year_from",
    label: "Year looked at, from",
    value: { formula: "EDATE(as_of,-12)+1" },
    look: "fieldDate",
    words: "Repeat animals, lesions and medicine use count from here.",
    rule: rules.day,
  },
  {
    name: "target",
    label: "Target",
    value: content.target,
    look: "fieldShare",
    words: "The share lame you aim to stay below.",
    rule: rules.innerShare,
  },
  {
    name: "lame_from",
    label: "Lowest score called lame",
    value: content.lameFrom ?? null,
    look: "fieldNumber",
    words: "On your scale of scores; count every sheep from it up as lame.",
    rule: { of: { whole: ["0", "6"] }, words: "Type a score, 0 to 6." },
  },
  {
    name: "recheck_days",
    label: "Look again after",
    value: 7,
    look: "fieldNumber",
    words: "Days from treatment to the second look, unless a case says another day.",
    rule: days,
  },
  {
    name: "ahead_days",
    label: "List looks due within",
    value: 7,
    look: "fieldNumber",
    words: "Days ahead that the sheet Today lists.",
    rule: days,
  },
  {
    name: "gap_days",
    label: "Gap between cases",
    value: 14,
    look: "fieldNumber",
    words: "Records of one animal at most so many days apart are one case.",
    rule: days,
  },
  {
    name: "repeat_from",
    label: "Repeat animal from",
    value: 2,
    look: "fieldNumber",
    words: "Cases in the year that put an animal on the list.",
    rule: { of: { whole: ["1", "99"] }, words: "Type a whole number of cases, 1 or more." },
  },
  {
    name: "settle_days",
    label: "Sound for",
    value: 7,
    look: "fieldNumber",
    words: "Days an animal must have been sound before it joins the others.",
    rule: days,
  },
  {
    name: "breeding_sheep",
    label: "Breeding sheep",
    value: content.breedingSheep ?? null,
    look: "fieldNumber",
    words: "For medicine use: breeding sheep on the farm.",
    rule: sheep,
  },
  {
    name: "slaughter_lambs",
    label: "Lambs to slaughter",
    value: content.slaughterLambs ?? null,
    look: "fieldNumber",
    words: "For medicine use: lambs sent to slaughter in the year, not those sold to be fattened.",
    rule: sheep,
  },
];

const firstSetting = 3;
const groupsRow = 18;
const medicinesRow = groupsRow + room.groups + 4;

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
    writeFields(sheet, nameCell, firstSetting, settingsFor(content));
    writeGroups(sheet, nameCell, content);
    writeLists(sheet, nameCell, content);
    writeMedicines(sheet, nameCell, content);
    sheet.protect();
    sheet.print({ cells: `$A$1:$F$${medicinesRow + room.medicines + 1}`, onOnePage: true });
  },
});

function writeGroups(sheet: SheetAuthor, nameCell: NameCell, { groups }: BookContent): void {
  sheet.put({ row: groupsRow - 1, column: 0 }, "Groups", "question");
  const area = { top: groupsRow, left: 0, bottom: groupsRow + room.groups, right: 1 };
  writeHeadings(sheet, { row: groupsRow, column: 0 }, groupHeadings, ["fieldText", "fieldCount"]);
  sheet.dress({ ...area, top: groupsRow + 1, right: 0 }, "fieldText");
  sheet.dress({ ...area, top: groupsRow + 1, left: 1 }, "fieldCount");
  groups.forEach((row, place) => {
    sheet.putRow({ row: groupsRow + 1 + place, column: 0 }, row);
  });
  sheet.table("Groups", area, false);
  sheet.accept({ ...area, top: groupsRow + 1, left: 1 }, sheep);
  nameFilled(nameCell, "group_list", 0, groupsRow + 1, room.groups);
}

// A list with blank lines at its end would let anything through, so each name ends with what is filled.
function nameFilled(nameCell: NameCell, name: string, column: number, top: number, rows: number): void {
  const letters = columnLetters(column);
  const sheet = quoteSheet(sheetNames.settings);
  const area = `${sheet}$${letters}$${top + 1}:$${letters}$${top + rows}`;
  nameCell(name, sheetNames.settings, {
    formula: `${sheet}$${letters}$${top + 1}:INDEX(${area},MAX(1,COUNTA(${area})))`,
  });
}

function writeLists(sheet: SheetAuthor, nameCell: NameCell, { givenBy }: BookContent): void {
  const lists = [
    { name: "given_by_list", table: "People", heading: "Given by", column: 3, words: givenBy, rows: room.groups },
    {
      name: "treatment_list",
      table: "Treatments",
      heading: "Treatment",
      column: 5,
      words: treatmentWords,
      rows: room.groups,
    },
  ];
  for (const { name, table, heading, column, words, rows } of lists) {
    const area = { top: groupsRow, left: column, bottom: groupsRow + rows, right: column };
    sheet.put({ row: groupsRow, column }, heading, "heading");
    sheet.dress({ ...area, top: groupsRow + 1 }, "fieldText");
    words.forEach((word, place) => {
      sheet.put({ row: groupsRow + 1 + place, column }, word);
    });
    sheet.table(table, area, false);
    nameFilled(nameCell, name, column, groupsRow + 1, rows);
  }
  sheet.put({ row: groupsRow - 1, column: 3 }, "Who treats", "question");
  sheet.put({ row: groupsRow - 1, column: 5 }, "Treatments", "question");
  const fixed = [
    { name: "lesion_list", heading: "Lesions", column: 7, words: lesions.map((lesion) => lesionWords[lesion]) },
    { name: "foot_list", heading: "Feet", column: 8, words: feetWords },
  ];
  for (const { name, heading, column, words } of fixed) {
    sheet.put({ row: groupsRow, column }, heading, "workedHeading");
    words.forEach((word, place) => {
      sheet.put({ row: groupsRow + 1 + place, column }, word, "worked");
    });
    const area = { top: groupsRow + 1, left: column, bottom: groupsRow + words.length, right: column };
    nameCell(name, sheetNames.settings, area);
  }
}

function writeMedicines(sheet: SheetAuthor, nameCell: NameCell, { medicines, invented }: BookContent): void {
  sheet.put({ row: medicinesRow - 2, column: 0 }, "Medicines", "question");
  sheet.put({ row: medicinesRow - 1, column: 0 }, invented ? inventedWords : medicineWords, "careHeading");
  const first = medicinesRow + 1;
  const area = {
    top: medicinesRow,
    left: 0,
    bottom: medicinesRow + room.medicines,
    right: medicineHeadings.length - 1,
  };
  const looks: readonly Look[] = ["fieldText", "fieldCount", "fieldCount", "fieldCount", "fieldText"];
  writeHeadings(sheet, { row: medicinesRow, column: 0 }, medicineHeadings, looks);
  const column = (place: number) => ({ ...area, top: first, left: place, right: place });
  looks.forEach((look, place) => {
    sheet.dress(column(place), look);
  });
  medicines.forEach((row, place) => {
    sheet.putRow({ row: first + place, column: 0 }, row);
  });
  sheet.table("Medicines", area, false);
  const amount: Rule = { ...rules.amount, words: "Type the number from the data sheet." };
  sheet.accept(column(1), amount);
  sheet.accept(column(2), amount);
  sheet.accept(column(3), days);
  sheet.accept(column(4), rules.yesNo);
  nameFilled(nameCell, "medicine_list", 0, first, room.medicines);
}
