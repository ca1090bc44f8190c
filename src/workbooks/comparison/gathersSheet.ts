import { areaText } from "../../workbook/address.ts";
import type { KeyOf } from "../tables/defineTable.ts";
import { flockGathers, flocks } from "../tables/flocks.ts";
import type { SheetPlan } from "../writing/authorWorkbook.ts";
import { filledIn } from "../writing/filledIn.ts";
import { firstOf } from "../writing/firstOf.ts";
import { writeGrid } from "../writing/placeGrid.ts";
import { writeTable } from "../writing/placeTable.ts";
import { rowCell } from "../writing/references.ts";
import type { ComparisonContent } from "./comparisonContent.ts";
import { notWhole } from "./notWhole.ts";
import { headingRow, type PlacedComparison, sheetNames } from "./placedComparison.ts";

/** On one sheet of paper: most of the room is empty. */
const printedRows = 50;

const notes = [
  "Only if you have them: one row for each flock and day, its groups together, of the year compared and the year before.",
  "Gathers of one flock differ by more than chance. With them ranges allow for that, and words about the target are surer.",
  "They are used where they add up to what stands for that flock and year on the sheet Flocks, looked at and lame.",
  "Where this sheet has no more room: soundfold collate reads any number of them from the flocks' own foot books.",
];

/** The gathers of each flock that is typed, where more than totals is known; beside them what keeps a row from being used. */
export const gathersSheet = ({ flocks: known }: ComparisonContent, placed: PlacedComparison): SheetPlan => ({
  name: sheetNames.gathers,
  write(sheet, nameCell) {
    const { gathers, besideGathers: beside } = placed;
    sheet.title("Gathers");
    notes.forEach((line, step) => {
      sheet.put({ row: 1 + step, column: 0 }, line, "note");
    });
    const toMend = filledIn(beside.range("toMend"));
    sheet.put(
      { row: 5, column: 0 },
      { formula: `IF(${toMend}=0,"",${toMend}&IF(${toMend}=1," row"," rows")&" cannot be used: see beside")` },
      "careHeading",
    );
    const records = known.flatMap(({ flock, gathers: those = [] }) =>
      those.map(({ day: date, lookedAt, lame }) => ({ flock, date, lookedAt, lame })),
    );
    writeTable(sheet, flockGathers, gathers, records, { widths: true });
    nameCell("gathers_counted", sheet.name, beside.column("counted"));
    const typed = (key: KeyOf<typeof flockGathers>, index: number): string =>
      rowCell({ row: gathers.rows.top + index, column: gathers.column(key).left });
    writeGrid(sheet, beside, {
      row: {
        heading: "row of Flocks",
        width: 8,
        look: "workedCount",
        holds: ({ place }) => {
          const same = `(TRIM(${flocks.of("flock")})=TRIM(${typed("flock", place)}))`;
          const rows = `SUMPRODUCT(${same}*(ROW(${flocks.of("flock")})-${headingRow + 1}))`;
          const once = `SUMPRODUCT(${same}*1)=1`;
          return { formula: `IF(LEN(TRIM(${typed("flock", place)}))=0,"",IF(${once},${rows},0))` };
        },
      },
      toMend: {
        heading: "not used, because",
        width: 38,
        look: "worked",
        holds: ({ place, cell }) => {
          const [flock, date, seen, lame] = flockGathers.keys.map((key) => typed(key, place)) as [
            string,
            string,
            string,
            string,
          ];
          const twice = `COUNTIFS(${beside.range("row")},${cell("row")},${flockGathers.of("date")},${date})>1`;
          const reasons: readonly (readonly [string, string])[] = [
            [`COUNTA(${flock}:${lame})=0`, ""],
            [`${cell("row")}=""`, "whose gather is this?"],
            ["LEN(year_compared)=0", "the year is not typed on the sheet Flocks"],
            [`${cell("row")}=0`, "no flock of that name, or two, on the sheet Flocks"],
            [`NOT(ISNUMBER(${date}))`, "the date is missing or no date"],
            [`ABS(YEAR(${date})-year_compared+0.5)>1`, "neither of the year compared nor of the one before"],
            [`COUNT(${seen},${lame})<2`, "looked at or lame is missing"],
            [`${lame}>${seen}`, "more lame than looked at"],
            [notWhole(seen, lame), "not a whole number of sheep"],
            [twice, "the day stands twice: add the rows up"],
          ];
          return { formula: firstOf(reasons, "") };
        },
      },
      counted: {
        heading: "counts for that row, below 0 in the year before",
        width: 18,
        look: "workedCount",
        holds: ({ place, cell }) => {
          const signed = `IF(YEAR(${typed("date", place)})=year_compared,1,-1)*${cell("row")}`;
          return { formula: `IF(OR(${cell("row")}="",LEN(${cell("toMend")})>0),"",${signed})` };
        },
      },
    });
    sheet.rowHeight(headingRow, 48);
    sheet.emphasize(beside.column("toMend"), [`LEN(${beside.cell("toMend")})>0`, "strong"]);
    sheet.freezeAt({ row: headingRow + 1, column: 1 });
    sheet.protect();
    const { right: column } = beside.column("toMend");
    const row = headingRow + printedRows;
    const beyond = areaText({ ...gathers.rows, top: row + 1 });
    sheet.put(
      { row: 6, column: 0 },
      {
        formula: `IF(COUNTA(${beyond})=0,"","Printed up to row ${row + 1}: choose all rows and print the selection.")`,
      },
      "careHeading",
    );
    sheet.print({ upTo: { row, column }, onOnePage: true });
  },
});
