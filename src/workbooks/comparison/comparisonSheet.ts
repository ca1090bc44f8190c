import type { KeyOf } from "../tables/defineTable.ts";
import { flocks as flocksTable } from "../tables/flocks.ts";
import type { SheetPlan } from "../writing/authorWorkbook.ts";
import type { Look } from "../writing/looks.ts";
import { orWords } from "../writing/orWords.ts";
import { type GridColumn, type Holds, writeGrid } from "../writing/placeGrid.ts";
import { cellOn } from "../writing/references.ts";
import type { ComparedFlock, ComparedFlocks } from "./comparedFlocks.ts";
import type { ComparisonContent } from "./comparisonContent.ts";
import { headingRow, type PlacedComparison, sheetNames } from "./placedComparison.ts";

type Key = Parameters<PlacedComparison["comparison"]["range"]>[0];
type Column = GridColumn<Key>;

/** Columns of formulas, which follow what is typed. */
function columnsOf({ counted, funnel, steadied, rows }: PlacedComparison): Readonly<Record<Key, Column>> {
  /** A cell of the flock's row in the table. */
  const of = (key: KeyOf<typeof flocksTable>, index: number): string => `INDEX(${flocksTable.of(key)},${index + 1})`;
  const typed = (heading: string, key: KeyOf<typeof flocksTable>, width: number, look: Look): Column => ({
    heading,
    width,
    look,
    holds: ({ place }) => ({ formula: `IF(LEN(${of(key, place)})=0,"",${of(key, place)})` }),
  });
  /** The flock's place among those that count; a blank where it does not. */
  const placeIn = (index: number): string => cellOn(sheetNames.figures, counted.at("place", index));
  const ifCounted =
    (formula: (cell: (key: KeyOf<typeof flocksTable>) => string, counted: string) => string): Holds<Key> =>
    ({ place }) => ({
      formula: `IF(ISNUMBER(${placeIn(place)}),${orWords(
        formula((key) => of(key, place), placeIn(place)),
        "not known",
      )},"")`,
    });
  /** The same where the answer fills cells beside it. */
  const answers = (
    columns: number,
    formula: (cell: (key: KeyOf<typeof flocksTable>) => string) => string,
    needed: readonly KeyOf<typeof flocksTable>[] = [],
  ): Holds<Key> => {
    return ({ place }) => {
      const cell = (key: KeyOf<typeof flocksTable>): string => of(key, place);
      const missing = needed.length === 0 ? "" : `,COUNT(${needed.map(cell).join(",")})<${needed.length}`;
      return {
        list: orWords(formula(cell), "not known"),
        room: { rows: 1, columns },
        unless: [`OR(NOT(ISNUMBER(${placeIn(place)}))${missing})`, '""'],
      };
    };
  };
  const fromList = (range: string): Holds<Key> => ifCounted((_, here) => `INDEX(${range},${here})`);
  return {
    flock: typed("flock", "flock", 26, "worked"),
    lookedAt: typed("looked at", "lookedAt", 9, "workedCount"),
    lame: typed("lame", "lame", 7, "workedCount"),
    share: { heading: "share lame", width: 9, look: "workedPercent", holds: fromList(funnel.range("share", rows)) },
    low: {
      heading: "low",
      width: 8,
      look: "workedPercent",
      holds: answers(2, (cell) => `FOOT.PREVRANGE(${cell("lame")},${cell("lookedAt")})`),
    },
    high: { heading: "high", width: 8, look: "workedPercent" },
    funnel: { heading: "in the funnel", width: 23, look: "worked", holds: fromList(funnel.range("word", rows)) },
    steadied: {
      heading: "steadied share",
      width: 10,
      look: "workedPercent",
      holds: fromList(steadied.range("steadied share", rows)),
    },
    rank: { heading: "rank", width: 7, look: "workedCount", holds: fromList(steadied.range("rank", rows)) },
    change: {
      heading: "change on the year before",
      width: 10,
      look: "workedPercent",
      holds: answers(
        4,
        (cell) =>
          `FOOT.PREVCHANGE(${cell("lameBefore")},${cell("lookedAtBefore")},${cell("lame")},${cell("lookedAt")})`,
        ["lameBefore", "lookedAtBefore"],
      ),
    },
    changeLow: { heading: "low", width: 8, look: "workedPercent" },
    changeHigh: { heading: "high", width: 8, look: "workedPercent" },
    p: { heading: "p", width: 8, look: "workedChance" },
    mgPcu: {
      heading: "mg/PCU",
      width: 11,
      look: "workedRate",
      holds: ifCounted((cell) => {
        const used = [cell("antibioticMg"), cell("breedingSheep"), cell("slaughterLambs")];
        return `IF(COUNT(${used.join(",")})<3,"not known",FOOT.MGPCU(${used.join(",")}))`;
      }),
    },
    against: {
      heading: "against the target",
      width: 38,
      look: "worked",
      holds: ifCounted(
        (cell) =>
          `FOOT.TARGETCHECK(${cell("lame")},${cell("lookedAt")},IF(LEN(${cell("target")})=0,target,${cell("target")}))`,
      ),
    },
    leftOut: {
      heading: "left out, because",
      width: 30,
      look: "worked",
      holds: ({ place, cell }) => {
        const [seen, lame] = [of("lookedAt", place), of("lame", place)];
        return {
          formula: `IF(OR(LEN(${cell("flock")})=0,ISNUMBER(${placeIn(place)})),"",IF(COUNT(${seen},${lame})<2,"looked at or lame is missing",IF(${lame}>${seen},"more lame than looked at",IF(${seen}=0,"no sheep looked at",IF(OR(${seen}<0,${lame}<0,INT(${seen})<>${seen},INT(${lame})<>${lame}),"not a whole number of sheep","the name stands twice")))))`,
        };
      },
    },
  };
}

/** The same columns of values. */
function settledColumns(
  columns: Readonly<Record<Key, Column>>,
  { flocks, done }: ComparisonContent,
  compared: ComparedFlocks,
): Readonly<Record<Key, Column>> {
  const of =
    (value: (flock: ComparedFlock, index: number) => number | string | undefined): Holds<Key> =>
    ({ place }) => {
      const flock = compared.flocks[place];
      return flock === undefined || typeof flock === "string" ? null : (value(flock, place) ?? null);
    };
  const holds: Readonly<Record<Key, Holds<Key>>> = {
    flock: ({ place }) => flocks[place]?.flock ?? null,
    lookedAt: ({ place }) => flocks[place]?.lookedAt ?? null,
    lame: ({ place }) => flocks[place]?.lame ?? null,
    share: of(({ share }) => share),
    low: of(({ range }) => range.low),
    high: of(({ range }) => range.high),
    funnel: of((flock) => flock.funnel?.word),
    steadied: of(({ steadied }) => steadied?.steadied),
    rank: of(({ steadied }) => steadied?.rank),
    change: of(({ change }) => change?.change),
    changeLow: of(({ change }) => change?.low),
    changeHigh: of(({ change }) => change?.high),
    p: of(({ change }) => change?.p),
    mgPcu: of((_, index) => (done?.[index] === undefined ? undefined : (done[index].mgPcu.value ?? "not known"))),
    against: of(({ against }) => against),
    leftOut: ({ place }) => {
      const flock = compared.flocks[place];
      return typeof flock === "string" ? flock : null;
    },
  };
  const settled = Object.entries(columns).map(([key, column]) => [key, { ...column, holds: holds[key as Key] }]);
  return Object.fromEntries(settled);
}

/** A row a flock, all of it worked out. */
export const comparisonSheet = (
  content: ComparisonContent,
  placed: PlacedComparison,
  compared: ComparedFlocks | undefined,
): SheetPlan => ({
  name: sheetNames.comparison,
  write(sheet) {
    const { comparison, counted } = placed;
    sheet.dress({ top: 0, left: 0, bottom: headingRow - 1, right: comparison.area.right }, "note");
    sheet.title("Comparison");
    const words = [
      "In the funnel: whether a flock of this size lies where chance would put it, were it like all flocks together.",
      "Steadied share: drawn towards the other flocks, the more the fewer sheep were looked at; rank 1 is the lowest.",
      "Change: below 0 is better; a range that holds 0 has not shown a change. p: how often chance alone does as much.",
    ];
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
        formula: `IF(flocks_counted=0,"No flocks yet: type them on the sheet Flocks.",flocks_counted&" flocks, "&SUM(${counted.range("lookedAt")})&" sheep looked at, "&ROUND(100*share_of_all,1)&" % of them lame.")`,
      },
    );
    words.forEach((line, step) => {
      sheet.put({ row: 3 + step, column: 0 }, line);
    });
    sheet.put(
      { row: 6, column: 0 },
      { formula: 'IF(rows_to_mend=0,"",rows_to_mend&" rows are left out: see the last column")' },
    );
    sheet.rowHeight(headingRow, 48);
    if (compared) sheet.rowsAside(headingRow + 1);
    const columns = columnsOf(placed);
    writeGrid(sheet, comparison, compared ? settledColumns(columns, content, compared) : columns);
    const { cell } = comparison;
    sheet.emphasize(
      comparison.rows,
      [`OR(LEFT(${cell("funnel")},5)="above",LEN(${cell("leftOut")})>0)`, "strong"],
      [`LEN(${cell("flock")})>0`, "line"],
    );
    sheet.freezeAt({ row: headingRow + 1, column: 1 });
    sheet.protect();
    sheet.print({
      sideways: true,
      // Where no flock is left out, the column that would say so takes no room on paper.
      upTo: {
        row: comparison.area.bottom,
        column: comparison.column(compared?.flocks.every((flock) => typeof flock !== "string") ? "against" : "leftOut")
          .left,
      },
      repeat: [headingRow, headingRow],
    });
  },
});
