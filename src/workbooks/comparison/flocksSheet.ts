import type { SheetPlan } from "../writing/authorWorkbook.ts";
import type { Look } from "../writing/looks.ts";
import { rules } from "../writing/rules.ts";
import type { Rule } from "../writing/sheetAuthor.ts";
import { writeFields } from "../writing/writeFields.ts";
import { writeHeadings } from "../writing/writeHeadings.ts";
import type { ComparisonContent } from "./comparisonContent.ts";
import { firstFlock, flockColumns, flockHeadings, headingRow, roomFor, sheetNames } from "./comparisonTables.ts";

const counts: Rule = rules.sheep;
const amount: Rule = { of: { number: ["0", "1000000000"] }, words: "Type the mg of active substance, 0 or more." };

/** What is known of each flock, a row each. */
export const flocksSheet = ({ flocks, year, target }: ComparisonContent): SheetPlan => ({
  name: sheetNames.flocks,
  write(sheet, nameCell) {
    const rows = roomFor(flocks.length);
    sheet.widths(28, 12, 10, 13, 12, 10, 13, 12, 10, 10, 34);
    sheet.title("Flocks");
    sheet.put(
      { row: 1, column: 0 },
      "One row for each flock: all its gathers of the year together. Type in the next free row.",
      "note",
    );
    writeFields(sheet, nameCell, 3, [
      {
        name: "year_compared",
        label: "Year",
        value: year ?? null,
        look: "fieldNumber",
        words: "The calendar year that the counts are of.",
        rule: { of: { whole: ["1990", "2100"] }, words: "Type a year, such as 2026." },
      },
      {
        name: "target",
        label: "Target",
        value: target,
        look: "fieldShare",
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
    const area = { top: headingRow, left: 0, bottom: headingRow + rows, right: flockHeadings.length - 1 };
    const column = (place: number) => ({ ...area, top: firstFlock, left: place, right: place });
    const looks: readonly Look[] = flockHeadings.map((heading) =>
      heading === "Flock" || heading === "Note"
        ? "fieldText"
        : heading === "Own target"
          ? "fieldPercent"
          : "fieldCount",
    );
    writeHeadings(sheet, { row: headingRow, column: 0 }, flockHeadings, looks);
    looks.forEach((look, place) => {
      sheet.dress(column(place), look);
    });
    flocks.forEach((record, place) => {
      const cells = flockHeadings.map((heading) => record[flockColumns[heading]] ?? null);
      sheet.putRow({ row: firstFlock + place, column: 0 }, cells);
    });
    sheet.table("Flocks", area, false);
    flockHeadings.forEach((heading, place) => {
      if (heading === "Own target") sheet.accept(column(place), rules.innerShare);
      if (looks[place] !== "fieldCount") return;
      sheet.accept(column(place), heading === "Antibiotics, mg" ? amount : counts);
    });
    nameCell("flock_list", sheet.name, {
      formula: `${sheet.name}!$A$${firstFlock + 1}:INDEX(${sheet.name}!$A$${firstFlock + 1}:$A$${firstFlock + rows},MAX(1,COUNTA(${sheet.name}!$A$${firstFlock + 1}:$A$${firstFlock + rows})))`,
    });
    sheet.freezeAt({ row: firstFlock, column: 1 });
    sheet.protect();
    sheet.print({ sideways: true, cells: `$A$1:$K$${firstFlock + rows}`, repeat: [headingRow, headingRow] });
  },
});
