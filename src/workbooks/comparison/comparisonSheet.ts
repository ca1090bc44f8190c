import type { KeyOf } from "../tables/defineTable.ts";
import { flockGathers, flocks as flocksTable } from "../tables/flocks.ts";
import type { SheetPlan } from "../writing/authorWorkbook.ts";
import { firstOf } from "../writing/firstOf.ts";
import type { Look } from "../writing/looks.ts";
import { orWords } from "../writing/orWords.ts";
import { type GridColumn, type Holds, writeGrid } from "../writing/placeGrid.ts";
import { cellOn } from "../writing/references.ts";
import type { ComparedFlock, ComparedFlocks } from "./comparedFlocks.ts";
import type { ComparisonContent } from "./comparisonContent.ts";
import { notWhole } from "./notWhole.ts";
import { headingRow, type PlacedComparison, sheetNames } from "./placedComparison.ts";
import { tooNear } from "./tooNear.ts";

type Key = Parameters<PlacedComparison["comparison"]["range"]>[0];
type Column = GridColumn<Key>;
type Typed = KeyOf<typeof flocksTable>;
/** What stands in a column where the flocks are known; undefined is a blank. */
type Known = (flock: ComparedFlock, index: number) => number | string | undefined;

/** Columns of formulas, which follow what is typed, or of values where the flocks were read from books. */
function columnsOf(
  { counted, funnel, steadied, rows }: PlacedComparison,
  { flocks, done }: ComparisonContent,
  compared: ComparedFlocks | undefined,
): Readonly<Record<Key, Column>> {
  const column = (heading: string, width: number, look: Look, known: Known, formula?: Holds<Key>): Column => {
    const value: Holds<Key> = ({ place }) => {
      const flock = compared?.flocks[place];
      return typeof flock === "object" ? (known(flock, place) ?? null) : null;
    };
    const holds = compared ? value : formula;
    return { heading, width, look, ...(holds && { holds }) };
  };
  /** A cell of the flock's row in the table. */
  const of = (key: Typed, index: number): string => `INDEX(${flocksTable.of(key)},${index + 1})`;
  const typed = (heading: string, key: "flock" | "lookedAt" | "lame", width: number, look: Look): Column => ({
    heading,
    width,
    look,
    holds: ({ place }) =>
      compared ? (flocks[place]?.[key] ?? null) : { formula: `IF(LEN(${of(key, place)})=0,"",${of(key, place)})` },
  });
  const figure = (key: "place" | "gathers" | "gathersBefore", index: number): string =>
    cellOn(sheetNames.figures, counted.at(key, index));
  /** The flock's place among those that count; a blank where it does not. */
  const placeIn = (index: number): string => figure("place", index);
  const ifCounted =
    (formula: (index: number) => string, array = false): Holds<Key> =>
    ({ place }) => ({
      formula: `IF(ISNUMBER(${placeIn(place)}),${orWords(formula(place), "not known")},"")`,
      ...(array && { array }),
    });
  /** The same where the answer fills cells beside it. */
  const answers =
    (columns: number, formula: (index: number) => string, needed: readonly Typed[] = []): Holds<Key> =>
    ({ place }) => {
      const missing =
        needed.length === 0 ? "" : `,COUNT(${needed.map((key) => of(key, place)).join(",")})<${needed.length}`;
      return {
        list: orWords(formula(place), "not known"),
        room: { rows: 1, columns },
        unless: [`OR(NOT(ISNUMBER(${placeIn(place)}))${missing})`, '""'],
      };
    };
  // Where there is no list, its blank cells are not known, and no 0.
  const fromList = (range: string): Holds<Key> =>
    ifCounted((index) => {
      const found = `INDEX(${range},${placeIn(index)})`;
      return `IF(LEN(${found})=0,"",${found})`;
    });
  /** Lame and looked at of each gather where they are known, else the totals. */
  const counts = (index: number, when: "now" | "before" = "now"): string => {
    const [known, row, totals] =
      when === "now"
        ? (["gathers", index + 1, ["lame", "lookedAt"]] as const)
        : (["gathersBefore", -index - 1, ["lameBefore", "lookedAtBefore"]] as const);
    return (["lame", "lookedAt"] as const)
      .map((key, step) => {
        const each = `IF(gathers_counted=${row},${flockGathers.of(key)},"")`;
        return `IF(ISNUMBER(${figure(known, index)}),${each},${of(totals[step] as Typed, index)})`;
      })
      .join(",");
  };
  const target = (index: number): string => `IF(LEN(${of("target", index)})=0,target,${of("target", index)})`;
  return {
    flock: typed("flock", "flock", 26, "worked"),
    lookedAt: typed("looked at", "lookedAt", 9, "workedCount"),
    lame: typed("lame", "lame", 7, "workedCount"),
    gathers: column(
      "gathers known",
      9,
      "workedCount",
      ({ gathers }) => gathers,
      ({ place }) => ({ formula: figure("gathers", place) }),
    ),
    share: column(
      "share lame",
      9,
      "workedPercent",
      ({ share }) => share,
      ifCounted((index) => `${of("lame", index)}/${of("lookedAt", index)}`),
    ),
    low: column(
      "low",
      8,
      "workedPercent",
      ({ range }) => range.low,
      answers(2, (index) => `FOOT.PREVRANGE(${counts(index)})`),
    ),
    high: column("high", 8, "workedPercent", ({ range }) => range.high),
    funnel: column("in the funnel", 23, "worked", (flock) => flock.funnel?.word, fromList(funnel.range("word", rows))),
    steadied: column(
      "steadied share",
      10,
      "workedPercent",
      (flock) => flock.steadied?.steadied,
      fromList(steadied.range("steadied share", rows)),
    ),
    rank: column("rank", 7, "workedCount", (flock) => flock.steadied?.rank, fromList(steadied.range("rank", rows))),
    change: column(
      "change on the year before",
      10,
      "workedPercent",
      ({ change }, index) => change?.change ?? (flocks[index]?.lookedAtBefore === 0 ? "not known" : undefined),
      answers(4, (index) => `FOOT.PREVCHANGE(${counts(index, "before")},${counts(index)})`, [
        "lameBefore",
        "lookedAtBefore",
      ]),
    ),
    changeLow: column("low", 8, "workedPercent", ({ change }) => change?.low),
    changeHigh: column("high", 8, "workedPercent", ({ change }) => change?.high),
    p: column("p", 8, "workedChance", ({ change }) => change?.p),
    mgPcu: column(
      "mg/PCU",
      11,
      "workedRate",
      (_, index) => done?.[index] && (done[index].mgPcu.value ?? "not known"),
      ifCounted((index) => {
        const used = (["antibioticMg", "breedingSheep", "slaughterLambs"] as const).map((key) => of(key, index)).join();
        return `IF(COUNT(${used})<3,"not known",FOOT.MGPCU(${used}))`;
      }),
    ),
    against: column(
      "against the target",
      46,
      "wordsBeside",
      ({ against }) => against,
      ifCounted((index) => {
        const [long, short] = tooNear;
        return `SUBSTITUTE(FOOT.TARGETCHECK(${counts(index)},${target(index)}),"${long}","${short}")`;
      }, true),
    ),
    leftOut: {
      heading: "left out, because",
      width: 30,
      look: "worked",
      holds: ({ place, cell }) => {
        if (compared) {
          const flock = compared.flocks[place];
          return typeof flock === "string" ? flock : null;
        }
        const [flock, seen, lame] = [of("flock", place), of("lookedAt", place), of("lame", place)];
        const said = firstOf(
          [
            [`OR(ISNUMBER(${placeIn(place)}),AND(LEN(${cell("flock")})=0,COUNTA(${seen},${lame})=0))`, ""],
            [`LEN(TRIM(${flock}))=0`, "the flock has no name"],
            [`COUNTA(${seen},${lame})<2`, "looked at or lame is missing"],
            [`COUNT(${seen},${lame})<2`, "looked at or lame is no number"],
            [`${lame}>${seen}`, "more lame than looked at"],
            [`${seen}=0`, "no sheep looked at"],
            [notWhole(seen, lame), "not a whole number of sheep"],
          ],
          "the name stands twice",
        );
        return { formula: said };
      },
    },
  };
}

/** Letters that fit in a line of the column against the target. */
const againstLength = 50;

const words = [
  "In the funnel: where a flock of its size lies among flocks that differ as much as these do. With fewer than ten flocks hardly one can stand out.",
  "Steadied share: drawn towards the other flocks, the more the fewer sheep were looked at; rank 1 is the lowest.",
  "Change: below 0 is better; a range that holds 0 has not shown a change. p: how often chance alone does as much.",
];

/** Why the word of a flock may be of its counts only; how else it could be is hinted at where rows are typed. */
const ofCountsOnly = (collated: boolean): string =>
  collated
    ? 'Ranges allow for gathers that differ. "In these counts only" is said of a flock gathered once: on another day it may lie elsewhere.'
    : '"In these counts only": of that flock totals are known, and not how much its gathers differ. Type them on the sheet Gathers, and ranges allow for that.';

/** A row a flock, all of it worked out. */
export const comparisonSheet = (
  content: ComparisonContent,
  placed: PlacedComparison,
  compared: ComparedFlocks | undefined,
): SheetPlan => ({
  name: sheetNames.comparison,
  write(sheet) {
    const { comparison, counted } = placed;
    const { area, rows, cell } = comparison;
    sheet.dress({ top: 0, left: 0, bottom: headingRow - 1, right: area.right }, "note");
    sheet.title("Comparison");
    sheet.put(
      { row: 1, column: 0 },
      {
        formula:
          '"Year: "&IF(LEN(year_compared)=0,"not typed yet",year_compared)&". Target: less than "&ROUND(100*target,1)&" % lame."',
      },
      "subtitle",
    );
    const mended =
      'IF(rows_to_mend=0,"",rows_to_mend&IF(rows_to_mend=1," row is"," rows are")&" left out: see the last column")';
    const notUsed = `COUNTIF(${comparison.range("gathers")},"not used")`;
    const lines = [
      {
        formula: `IF(flocks_counted=0,"No flocks yet: type them on the sheet Flocks.",flocks_counted&" flocks, "&SUM(${counted.range("lookedAt")})&" looked at, each time anew, "&ROUND(100*share_of_all,1)&" % of them lame.")`,
      },
      ...words,
      ofCountsOnly(compared !== undefined),
      {
        formula: compared
          ? mended
          : `${mended}&IF(${notUsed}=0,"",IF(rows_to_mend=0,"","; ")&${notUsed}&IF(${notUsed}=1," flock has"," flocks have")&" gathers that do not come to the totals: see Gathers")`,
      },
    ];
    lines.forEach((line, step) => {
      sheet.put({ row: 2 + step, column: 0 }, line);
    });
    sheet.rowHeight(headingRow, 48);
    if (compared) sheet.rowsAside(headingRow + 1);
    writeGrid(sheet, comparison, columnsOf(placed, content, compared));
    compared?.flocks.forEach((flock, index) => {
      const lines = typeof flock === "object" ? Math.ceil(flock.against.length / againstLength) : 1;
      if (lines > 1) sheet.rowHeight(rows.top + index, lines * 15 + 1);
    });
    sheet.emphasize(
      rows,
      [`OR(LEFT(${cell("funnel")},5)="above",LEN(${cell("leftOut")})>0)`, "strong"],
      [`LEN(${cell("flock")})>0`, "line"],
    );
    sheet.freezeAt({ row: headingRow + 1, column: 1 });
    sheet.protect();
    // Where no flock is left out, the column that would say so takes no room on paper.
    const last = compared?.flocks.every((flock) => typeof flock === "object") ? "against" : "leftOut";
    sheet.print({
      sideways: true,
      upTo: { row: area.bottom, column: comparison.column(last).left },
      repeat: [headingRow, headingRow],
    });
  },
});
