import { ewes, lambs, year } from "../inventedFlock/flockYear.ts";
import type { SheetPlan } from "../writing/authorWorkbook.ts";
import { fieldOf } from "../writing/fields.ts";
import { type Field, writeFields } from "../writing/writeFields.ts";
import { sheetNames } from "./placedRecords.ts";

/** The last month's gathers. */
export const latestGathersFrom = year.last - 30;

const [date, share, number] = [fieldOf("inputDate"), fieldOf("inputShare"), fieldOf("inputNumber")];

const settingsFor = (flockNow: number): readonly Field[] => [
  date("as_of", "Worked out for", year.last, "In your own workbook put =TODAY() here."),
  date("latest_from", "Latest gathers from", latestGathersFrom, "Gathers from this day on are the flock as it is now."),
  number("flock_now", "Sheep in the flock", flockNow, "All sheep there at the latest gathers, seen or missed."),
  share("target", "Target", 0.05, "The share lame you aim to stay below."),
  number("look_again_after", "Look again after", 7, "Days from treatment to the second look."),
  date("housing_date", "Next housing", year.nextHousing, "Lame sheep are kept apart from this day on."),
  number("breeding_sheep", "Breeding sheep", ewes, "For medicine use: ewes in the flock over the year."),
  number("slaughter_lambs", "Lambs to slaughter", lambs, "For medicine use: lambs sent to slaughter in the year."),
  date("sale_date", "Sale", year.sale, "The tags for sale stand on the right."),
];

const firstSetting = 3;
const saleColumn = 4;

/** What the answers depend on and a person may change: one yellow cell each, with a name that formulas use. */
export const settingsSheet = (saleTags: readonly string[], flockNow: number): SheetPlan => ({
  name: sheetNames.settings,
  write(sheet, nameCell) {
    sheet.widths(22, 16, 52, 4, 30);
    sheet.title("Settings");
    sheet.put({ row: 1, column: 0 }, "Change a yellow cell and everything follows.", "note");
    writeFields(sheet, nameCell, firstSetting, settingsFor(flockNow));
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
    sheet.print({ sideways: true });
  },
});
