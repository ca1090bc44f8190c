import { ewes, lambs, year } from "../inventedFlock/flockYear.ts";
import type { SheetPlan } from "../writing/authorWorkbook.ts";
import type { Look } from "../writing/looks.ts";
import type { Content } from "../writing/sheetAuthor.ts";
import { sheetNames } from "./placedRecords.ts";

/** The last month's gathers. */
export const latestGathersFrom = year.last - 30;

interface Setting {
  readonly name: string;
  readonly label: string;
  readonly value: Content;
  readonly look: Look;
  readonly words: string;
}

const settingsFor = (flockNow: number): readonly Setting[] => [
  {
    name: "as_of",
    label: "Worked out for",
    value: year.last,
    look: "inputDate",
    words: "In your own workbook put =TODAY() here.",
  },
  {
    name: "latest_from",
    label: "Latest gathers from",
    value: latestGathersFrom,
    look: "inputDate",
    words: "Gathers from this day on are the flock as it is now.",
  },
  {
    name: "flock_now",
    label: "Sheep in the flock",
    value: flockNow,
    look: "inputNumber",
    words: "All sheep there at the latest gathers, seen or missed.",
  },
  { name: "target", label: "Target", value: 0.05, look: "inputShare", words: "The share lame you aim to stay below." },
  {
    name: "look_again_after",
    label: "Look again after",
    value: 7,
    look: "inputNumber",
    words: "Days from treatment to the second look.",
  },
  {
    name: "housing_date",
    label: "Next housing",
    value: year.nextHousing,
    look: "inputDate",
    words: "Lame sheep are kept apart from this day on.",
  },
  {
    name: "breeding_sheep",
    label: "Breeding sheep",
    value: ewes,
    look: "inputNumber",
    words: "For medicine use: ewes in the flock over the year.",
  },
  {
    name: "slaughter_lambs",
    label: "Lambs to slaughter",
    value: lambs,
    look: "inputNumber",
    words: "For medicine use: lambs sent to slaughter in the year.",
  },
  {
    name: "sale_date",
    label: "Sale",
    value: year.sale,
    look: "inputDate",
    words: "The tags for sale stand on the right.",
  },
];

const firstSetting = 3;
const saleColumn = 4;

/** What the answers depend on and a person may change: one yellow cell each, with a name that formulas use. */
export const settingsSheet = (saleTags: readonly string[], flockNow: number): SheetPlan => ({
  name: sheetNames.settings,
  write(sheet, nameCell) {
    sheet.widths(22, 16, 52, 4, 30);
    sheet.put({ row: 0, column: 0 }, "Settings", "title");
    sheet.rowHeight(0, 28);
    sheet.put({ row: 1, column: 0 }, "Change a yellow cell and everything follows.", "note");
    settingsFor(flockNow).forEach(({ name, label, value, look, words }, index) => {
      const row = firstSetting + index;
      sheet.put({ row, column: 0 }, label, "label");
      sheet.put({ row, column: 1 }, value, look);
      sheet.put({ row, column: 2 }, words, "note");
      nameCell(name, sheetNames.settings, { row, column: 1 });
    });
    sheet.put({ row: firstSetting - 1, column: saleColumn }, "Tags picked out for the sale", "strong");
    saleTags.forEach((tag, index) => {
      sheet.put({ row: firstSetting + index, column: saleColumn }, tag, "input");
    });
    nameCell("sale_tags", sheetNames.settings, {
      top: firstSetting,
      left: saleColumn,
      bottom: firstSetting + saleTags.length - 1,
      right: saleColumn,
    });
    sheet.printWide();
  },
});
