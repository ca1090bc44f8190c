import type { SheetPlan } from "../writing/authorWorkbook.ts";
import type { Look } from "../writing/looks.ts";
import { orWords } from "../writing/orWords.ts";
import type { ComparisonContent } from "./comparisonContent.ts";
import { columnOf, firstFlock, headingRow, roomFor, sheetNames } from "./comparisonTables.ts";
import { figuresTop, funnelColumn, parts, steadiedColumn } from "./figuresPlaces.ts";

interface Column {
  readonly heading: string;
  readonly width: number;
  readonly look: Look;
  /** Without `=`; left out where the formula at its left fills it too. */
  readonly formula?: (cell: (heading: string) => string, row: CellsOfRow) => string;
}

interface CellsOfRow {
  /** The place among the flocks that count, or a blank. */
  readonly place: string;
  readonly of: (table: string) => string;
  readonly rows: number;
}

const counted = (place: string, formula: string): string =>
  `IF(ISNUMBER(${place}),${orWords(formula, "not known")},"")`;
const needs = (cells: readonly string[], place: string, formula: string): string =>
  counted(place, `IF(COUNT(${cells.join(",")})<${cells.length},"",${formula})`);

const columns: readonly Column[] = [
  {
    heading: "flock",
    width: 26,
    look: "worked",
    formula: (_, { of }) => `IF(LEN(${of("Flock")})=0,"",${of("Flock")})`,
  },
  {
    heading: "looked at",
    width: 9,
    look: "workedCount",
    formula: (_, { of }) => `IF(LEN(${of("Looked at")})=0,"",${of("Looked at")})`,
  },
  {
    heading: "lame",
    width: 7,
    look: "workedCount",
    formula: (_, { of }) => `IF(LEN(${of("Lame")})=0,"",${of("Lame")})`,
  },
  {
    heading: "share lame",
    width: 9,
    look: "workedPercent",
    formula: (_, { place, rows }) => counted(place, `INDEX(${funnelColumn("share", rows)},${place})`),
  },
  {
    heading: "low",
    width: 8,
    look: "workedPercent",
    formula: (_, { place, of }) => counted(place, `FOOT.PREVRANGE(${of("Lame")},${of("Looked at")})`),
  },
  { heading: "high", width: 8, look: "workedPercent" },
  {
    heading: "in the funnel",
    width: 23,
    look: "worked",
    formula: (_, { place, rows }) => counted(place, `INDEX(${funnelColumn("word", rows)},${place})`),
  },
  {
    heading: "steadied share",
    width: 10,
    look: "workedPercent",
    formula: (_, { place, rows }) => counted(place, `INDEX(${steadiedColumn("steadied share", rows)},${place})`),
  },
  {
    heading: "rank",
    width: 7,
    look: "workedCount",
    formula: (_, { place, rows }) => counted(place, `INDEX(${steadiedColumn("rank", rows)},${place})`),
  },
  {
    heading: "change on the year before",
    width: 10,
    look: "workedPercent",
    formula: (_, { place, of }) => {
      const before = [of("Lame, year before"), of("Looked at, year before")];
      return needs(before, place, `FOOT.PREVCHANGE(${before.join(",")},${of("Lame")},${of("Looked at")})`);
    },
  },
  { heading: "low", width: 8, look: "workedPercent" },
  { heading: "high", width: 8, look: "workedPercent" },
  { heading: "p", width: 7, look: "workedNumber" },
  {
    heading: "mg/PCU",
    width: 9,
    look: "workedRate",
    formula: (_, { place, of }) => {
      const used = [of("Antibiotics, mg"), of("Breeding sheep"), of("Lambs sold")];
      return needs(used, place, `FOOT.MGPCU(${used.join(",")})`);
    },
  },
  {
    heading: "against the target",
    width: 38,
    look: "worked",
    formula: (_, { place, of }) =>
      counted(
        place,
        `FOOT.TARGETCHECK(${of("Lame")},${of("Looked at")},IF(LEN(${of("Own target")})=0,target,${of("Own target")}))`,
      ),
  },
  {
    heading: "left out, because",
    width: 30,
    look: "worked",
    formula: (cell, { place, of }) => {
      const [seen, lame] = [of("Looked at"), of("Lame")];
      return `IF(OR(LEN(${cell("flock")})=0,ISNUMBER(${place})),"",IF(COUNT(${seen},${lame})<2,"looked at or lame is missing",IF(${lame}>${seen},"more lame than looked at",IF(${seen}=0,"no sheep looked at",IF(OR(${seen}<0,${lame}<0,INT(${seen})<>${seen},INT(${lame})<>${lame}),"not a whole number of sheep","the name stands twice")))))`;
    },
  },
];

/** The column of a heading, counted from 0; the first of that name. */
export const comparisonColumn = (heading: string): number => columns.findIndex((column) => column.heading === heading);

/** A row a flock, all of it worked out. */
export const comparisonSheet = ({ flocks }: ComparisonContent): SheetPlan => ({
  name: sheetNames.comparison,
  write(sheet) {
    const rows = roomFor(flocks.length);
    sheet.widths(...columns.map(({ width }) => width));
    const last = columns.length - 1;
    sheet.dress({ top: 0, left: 0, bottom: headingRow - 1, right: last }, "note");
    sheet.title("Comparison");
    sheet.put(
      { row: 1, column: 0 },
      {
        formula:
          '"Year: "&IF(LEN(year_compared)=0,"not typed yet",year_compared)&". Target: less than "&ROUND(100*target,1)&" % lame."',
      },
      "subtitle",
    );
    sheet.put(
      { row: 2, column: 0 },
      {
        formula: `IF(flocks_counted=0,"No flocks yet: type them on the sheet Flocks.",flocks_counted&" flocks, "&SUM(${columnOf(sheetNames.figures, parts.counted + 2, figuresTop, rows)})&" sheep looked at, "&ROUND(100*share_of_all,1)&" % of them lame.")`,
      },
    );
    sheet.put(
      { row: 3, column: 0 },
      "In the funnel: whether a flock of this size lies where chance would put it, were it like all flocks together.",
    );
    sheet.put(
      { row: 4, column: 0 },
      "Steadied share: drawn towards the other flocks, the more the fewer sheep were looked at; rank 1 is the lowest.",
    );
    sheet.put(
      { row: 5, column: 0 },
      "Change: below 0 is better; a range that holds 0 has not shown a change. p: how often chance alone does as much.",
    );
    sheet.put(
      { row: 6, column: 0 },
      { formula: 'IF(rows_to_mend=0,"",rows_to_mend&" rows are left out: see the last column")' },
    );
    sheet.rowHeight(headingRow, 48);
    columns.forEach(({ heading, look }, column) => {
      const centred = look !== "worked";
      sheet.put({ row: headingRow, column }, heading, centred ? "workedHeadingCentre" : "workedHeading");
      sheet.dress({ top: firstFlock, left: column, bottom: firstFlock + rows - 1, right: column }, look);
    });
    for (let place = 0; place < rows; place++) {
      const row = firstFlock + place;
      const here: CellsOfRow = {
        place: `${sheetNames.figures}!$A$${figuresTop + place + 1}`,
        of: (heading) => `INDEX(Flocks[${heading}],${place + 1})`,
        rows,
      };
      columns.forEach(({ formula }, column) => {
        if (formula) sheet.put({ row, column }, { formula: formula(() => `$A$${row + 1}`, here) });
      });
    }
    const n = firstFlock + 1;
    sheet.emphasize(
      { top: firstFlock, left: 0, bottom: firstFlock + rows - 1, right: last },
      [`OR(LEFT($G${n},5)="above",LEN($P${n})>0)`, "strong"],
      [`LEN($A${n})>0`, "line"],
    );
    sheet.freezeAt({ row: firstFlock, column: 1 });
    sheet.protect();
    sheet.print({
      sideways: true,
      cells: `$A$1:$P$${firstFlock + rows}`,
      repeat: [headingRow, headingRow],
    });
  },
});
