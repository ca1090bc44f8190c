import { flocks } from "../tables/flocks.ts";
import type { SheetPlan } from "../writing/authorWorkbook.ts";
import type { Look } from "../writing/looks.ts";
import { writeTable } from "../writing/placeTable.ts";
import { cellOn } from "../writing/references.ts";
import { rules } from "../writing/rules.ts";
import { writeFields } from "../writing/writeFields.ts";
import { type ComparisonContent, isCollated } from "./comparisonContent.ts";
import { headingRow, type PlacedComparison, sheetNames } from "./placedComparison.ts";

/** How what was typed looks where nothing is to be typed. */
const lockedLooks: Partial<Record<Look, Look>> = { fieldCount: "workedCount", fieldPercent: "workedPercent" };

/** What is known of each flock, a row each. */
export const flocksSheet = (content: ComparisonContent, { flocks: placed }: PlacedComparison): SheetPlan => ({
  name: sheetNames.flocks,
  write(sheet, nameCell) {
    const { flocks: known, year, target } = content;
    const collated = isCollated(content);
    sheet.title("Flocks");
    sheet.put(
      { row: 1, column: 0 },
      collated
        ? "One row for each flock: all its gathers of the year together, as they stand in its own foot book."
        : "One row for each flock: all its gathers of the year together. Type in the next free row.",
      "note",
    );
    writeFields(sheet, nameCell, 3, [
      {
        name: "year_compared",
        label: "Year",
        value: year ?? null,
        look: collated ? "workedAtLeft" : "fieldNumber",
        words: "The calendar year that the counts are of.",
        rule: { of: { whole: ["1990", "2100"] }, words: "Type a year, such as 2026." },
      },
      {
        name: "target",
        label: "Target",
        value: target,
        look: collated ? "workedShareAtLeft" : "fieldShare",
        words: "The share lame to stay below, for flocks without one of their own.",
        rule: rules.innerShare,
      },
    ]);
    sheet.put(
      { row: 6, column: 0 },
      "Antibiotics: mg of active substance in the year. Breeding sheep and lambs sold set it against the size of the flock (mg/PCU).",
      "note",
    );
    sheet.rowHeight(headingRow, 48);
    if (collated) sheet.rowsAside(headingRow + 1);
    writeTable(sheet, flocks, placed, known, { widths: true, dressed: !collated });
    if (collated)
      for (const key of flocks.keys) sheet.dress(placed.column(key), lockedLooks[flocks.columns[key].look] ?? "worked");
    // Up to the last that is filled, though rows above it may be blank.
    const names = placed.range("flock");
    const first = cellOn(sheet.name, { row: placed.rows.top, column: placed.column("flock").left });
    const last = `SUMPRODUCT(MAX((LEN(${names})>0)*(ROW(${names})-${headingRow + 1})))`;
    nameCell("flock_list", sheet.name, { formula: `${first}:INDEX(${names},MAX(1,${last}))` });
    sheet.freezeAt({ row: headingRow + 1, column: 1 });
    sheet.protect();
    const { bottom: row, right: column } = placed.area;
    sheet.print({ sideways: true, upTo: { row, column }, repeat: [headingRow, headingRow] });
  },
});
