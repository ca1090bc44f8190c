import { columnLetters } from "../../workbook/address.ts";
import { flocks } from "../tables/flocks.ts";
import type { SheetPlan } from "../writing/authorWorkbook.ts";
import { filledIn } from "../writing/filledIn.ts";
import type { Look } from "../writing/looks.ts";
import { orWords } from "../writing/orWords.ts";
import { type GridColumn, type Holds, writeGrid } from "../writing/placeGrid.ts";
import { writeList, writeValues } from "../writing/placeList.ts";
import { cellOn, cellsOn } from "../writing/references.ts";
import type { Content, NameCell, SheetAuthor } from "../writing/sheetAuthor.ts";
import type { ComparedFlock, ComparedFlocks } from "./comparedFlocks.ts";
import type { ComparisonContent } from "./comparisonContent.ts";
import { limitNames, type PlacedComparison, sheetNames } from "./placedComparison.ts";

const fewFlocks = "two flocks or more are needed";
const noSpread = "every flock has none or all of its sheep lame";

/** The lists that everything is drawn from, in places that do not move. */
export const figuresSheet = (
  content: ComparisonContent,
  placed: PlacedComparison,
  compared: ComparedFlocks | undefined,
): SheetPlan => ({
  name: sheetNames.figures,
  write(sheet, nameCell) {
    const { counted, steadied } = placed;
    const { top } = counted.area;
    sheet.title("Figures");
    sheet.put({ row: 1, column: 0 }, "Nothing to type here. #N/A is meant: it leaves a gap in a chart.", "note");
    sheet.rowHeight(top, 32);
    if (compared) sheet.rowsAside(top + 1);
    sheet.widths(8, 24, 10, 8, 9, 9, 4, 16, 9, 9, 9, 9, 9, 9, 23, 4, 16);
    writeCounted(sheet, placed, content, compared);
    writeSums(sheet, nameCell, placed, compared);
    writeLists(sheet, placed, compared);
    writeLimits(sheet, placed, content, compared);
    writeRanked(sheet, placed, content, compared);
    sheet.protect();
    sheet.print({
      sideways: true,
      upTo: { row: counted.area.bottom, column: steadied.at.column + 4 },
      repeat: [top, top],
    });
  },
});

// A row that cannot count is kept out of every list, or it would take the others with it.
function writeCounted(
  sheet: SheetAuthor,
  { counted, gathers, besideGathers }: PlacedComparison,
  content: ComparisonContent,
  compared: ComparedFlocks | undefined,
): void {
  type Key = Parameters<typeof counted.range>[0];
  type Typed = "flock" | "lookedAt" | "lame" | "lookedAtBefore" | "lameBefore";
  const of = (key: Typed, index: number): string => `INDEX(${flocks.of(key)},${index + 1})`;
  const ifCounted =
    (
      value: (flock: ComparedFlock, name: string) => string | number | undefined,
      formula: (index: number) => string,
    ): Holds<Key> =>
    ({ place, cell }) => {
      if (!compared) return { formula: `IF(ISNUMBER(${cell("place")}),${formula(place)},"")` };
      const flock = compared.flocks[place];
      return typeof flock === "object" ? (value(flock, content.flocks[place]?.flock ?? "") ?? null) : null;
    };
  /** How many gathers are known, where they come to what is typed of the flock. */
  const gathersOf =
    (sign: 1 | -1, lookedAt: Typed, lame: Typed) =>
    (index: number): string => {
      const place = `${besideGathers.range("counted")},${sign * (index + 1)}`;
      const sums = [lookedAt, lame].map((key, step) => {
        const column = gathers.range(step === 0 ? "lookedAt" : "lame");
        return `SUMIF(${place},${column})=${of(key, index)}`;
      });
      const many = `COUNTIFS(${place},${gathers.range("lookedAt")},">0")`;
      const faulty = `COUNTIFS(${besideGathers.range("row")},${index + 1},${besideGathers.range("toMend")},"?*")`;
      return `IF(${many}=0,IF(${faulty}=0,"","not used"),IF(AND(${sums.join(",")}),${many},"not used"))`;
    };
  sheet.put({ row: counted.area.top - 1, column: 0 }, "Flocks that count", "question");
  writeGrid(sheet, counted, {
    place: {
      heading: "place",
      look: "workedCount",
      holds: ({ place, before }) => {
        if (compared) return compared.places[place] ?? null;
        const [name, seen, lame] = [of("flock", place), of("lookedAt", place), of("lame", place)];
        const whole = `${seen}>0,${lame}>=0,${lame}<=${seen},INT(${seen})=${seen},INT(${lame})=${lame}`;
        const once = `SUMPRODUCT((TRIM(Flocks[Flock])=TRIM(${name}))*1)=1`;
        const above = before("place");
        const next = above === undefined ? "1" : `COUNT(${above})+1`;
        return {
          formula: `IF(LEN(TRIM(${name}))=0,"",IF(COUNT(${seen},${lame})<2,"",IF(AND(${whole},${once}),${next},"")))`,
        };
      },
    },
    flock: {
      heading: "flock",
      look: "worked",
      holds: ifCounted(
        (_, name) => name,
        (index) => of("flock", index),
      ),
    },
    lookedAt: {
      heading: "looked at",
      look: "workedCount",
      holds: ifCounted(
        ({ seen }) => seen,
        (index) => of("lookedAt", index),
      ),
    },
    lame: {
      heading: "lame",
      look: "workedCount",
      holds: ifCounted(
        ({ lame }) => lame,
        (index) => of("lame", index),
      ),
    },
    gathers: {
      heading: "gathers",
      look: "workedCount",
      holds: ifCounted(({ gathers: known }) => known, gathersOf(1, "lookedAt", "lame")),
    },
    gathersBefore: {
      heading: "gathers before",
      look: "workedCount",
      holds: ifCounted(({ gathersBefore }) => gathersBefore, gathersOf(-1, "lookedAtBefore", "lameBefore")),
    },
  });
}

function writeSums(
  sheet: SheetAuthor,
  nameCell: NameCell,
  { counted, comparison }: PlacedComparison,
  known: ComparedFlocks | undefined,
): void {
  const [seen, lame] = [counted.range("lookedAt"), counted.range("lame")];
  sheet.put({ row: 2, column: 0 }, "all", "label");
  const sums: readonly (readonly [name: string, value: number | undefined, formula: string, look: Look])[] = [
    ["flocks_counted", known?.counted, `COUNT(${counted.range("place")})`, "workedCount"],
    ["share_of_all", known && shareOfAll(known), `IF(SUM(${seen})=0,0,SUM(${lame})/SUM(${seen}))`, "workedPercent"],
    [
      "rows_to_mend",
      known?.flocks.filter((flock) => typeof flock === "string").length,
      filledIn(comparison.range("leftOut")),
      "workedCount",
    ],
  ];
  sums.forEach(([name, value, formula, look], step) => {
    const at = { row: 2, column: 1 + step };
    sheet.put(at, value ?? { formula }, look);
    nameCell(name, sheet.name, at);
  });
}

const shareOfAll = ({ lame, seen }: ComparedFlocks): number => (seen === 0 ? 0 : lame / seen);

function writeLists(
  sheet: SheetAuthor,
  { counted, funnel, steadied, rows }: PlacedComparison,
  compared: ComparedFlocks | undefined,
): void {
  if (compared) {
    const alike = compared.counted < 2 ? fewFlocks : noSpread;
    writeValues(sheet, funnel, "Funnel", typeof compared.funnel === "string" ? alike : compared.funnel);
    writeValues(sheet, steadied, "Steadied shares", compared.inTurn.length === 0 ? alike : compared.inOrder);
    return;
  }
  const columns = (["flock", "lame", "lookedAt"] as const).map((key) => counted.range(key)).join(",");
  for (const [question, list, formula] of [
    ["Funnel", funnel, `FOOT.FUNNEL(${columns},,TRUE)`],
    ["Steadied shares", steadied, `FOOT.SHRUNKPREV(${columns})`],
  ] as const)
    writeList(sheet, list, {
      question,
      rows,
      fits: true,
      dress: "rows",
      formula: `IF(flocks_counted<2,"${fewFlocks}",${orWords(formula, noSpread)})`,
    });
}

/** The limits of the flocks from the smallest to the largest, so that they show as curves. */
function writeLimits(
  sheet: SheetAuthor,
  { counted, funnel, limits, rows }: PlacedComparison,
  { target }: ComparisonContent,
  compared: ComparedFlocks | undefined,
): void {
  type Key = Parameters<typeof limits.range>[0];
  const drawn =
    typeof compared?.funnel === "object" ? compared.funnel.toSorted((one, other) => one.seen - other.seen) : [];
  const keys = ["low95", "high95", "low998", "high998"] as const;
  const holds =
    (key: "seen" | (typeof keys)[number], formula: Holds<Key>): Holds<Key> =>
    (row) =>
      compared ? (drawn[Math.min(row.place, drawn.length - 1)]?.[key] ?? null) : formula(row);
  const limit = (step: number): GridColumn<Key> => {
    const heading = limitNames[step] as (typeof limitNames)[number];
    const formula: Holds<Key> = ({ cell }) => ({
      formula: `IF(flocks_counted<2,"",IFERROR(INDEX(${funnel.range(heading, rows)},MATCH(${cell("seen")},${funnel.range("seen", rows)},0)),NA()))`,
    });
    return { heading, look: "workedPercent", holds: holds(keys[step] as (typeof keys)[number], formula) };
  };
  sheet.put({ row: limits.area.top - 1, column: limits.area.left }, "Limits by size of flock", "question");
  writeGrid(sheet, limits, {
    seen: {
      heading: "looked at",
      look: "workedCount",
      // The last again where there are no more: a cell without a number would make the sizes words.
      holds: holds("seen", ({ place }) => ({
        formula: `IF(flocks_counted<2,${place + 1},SMALL(${counted.range("lookedAt")},MIN(${place + 1},flocks_counted)))`,
      })),
    },
    "low 95 %": limit(0),
    "high 95 %": limit(1),
    "low 99.8 %": limit(2),
    "high 99.8 %": limit(3),
    target: { heading: "target", look: "workedPercent", holds: () => (compared ? target : { formula: "target" }) },
  });
}

/** The flocks in order of rank, for the charts; equal ranks in the order of the rows. */
function writeRanked(
  sheet: SheetAuthor,
  { ranked, steadied, rows }: PlacedComparison,
  { target }: ComparisonContent,
  settled: ComparedFlocks | undefined,
): void {
  type Key = Parameters<typeof ranked.range>[0];
  const rank = steadied.range("rank", rows);
  const there = (index: number, formula: string, otherwise = "NA()"): string =>
    `IF(${index + 1}<=COUNT(${rank}),${formula},${otherwise})`;
  /** A value where the flocks are known and there is one in this row, else a formula. */
  const holds =
    (value: (index: number) => Content, formula: Holds<Key>): Holds<Key> =>
    (row) =>
      !settled ? formula(row) : row.place < settled.inTurn.length ? value(row.place) : null;
  // The place in the list of the flock whose turn it is.
  const of = (heading: string, index: number): string =>
    `INDEX(${steadied.range(heading, rows)},MATCH(${index + 1},${ranked.range("order")},0))`;
  const listed = (heading: string, key: "low" | "high" | "steadied"): Holds<Key> =>
    holds(
      (index) => settled?.inTurn[index]?.[key] ?? null,
      ({ place }) => ({ formula: there(place, of(heading, place)) }),
    );
  const isChosen = (name: string): string => `AND(LEN(chosen_flock)>0,${name}=chosen_flock)`;
  /** What hangs on the flock that is chosen, and so is a formula in a collated comparison too. */
  const asChosen =
    (formula: (cell: (key: Key) => string, index: number) => string, otherwise?: string): Holds<Key> =>
    (row) => {
      const content = formula(row.cell, row.place);
      return holds(
        () => ({ formula: content }),
        () => ({ formula: there(row.place, content, otherwise) }),
      )(row);
    };
  const percent = (heading: string, holds: Holds<Key>): GridColumn<Key> => ({ heading, look: "workedPercent", holds });
  sheet.put({ row: ranked.area.top - 1, column: ranked.area.left }, "In order", "question");
  writeGrid(sheet, ranked, {
    order: {
      heading: "order",
      look: "workedCount",
      holds: holds(
        (index) => settled?.turns[index] ?? null,
        ({ place }) => {
          const { top, left, right } = steadied.column("rank", rows);
          const here = cellOn(sheet.name, { row: top + place, column: left });
          const ties = `COUNTIF(${cellsOn(sheet.name, { top, left, bottom: top + place, right })},${here})`;
          return { formula: `IF(ISNUMBER(${here}),${here}+${ties}-1,"")` };
        },
      ),
    },
    // Joined to nothing, a text that a function gave is found equal to a typed one in every spreadsheet.
    name: {
      heading: "name",
      look: "worked",
      holds: holds(
        (index) => settled?.inTurn[index]?.flock ?? null,
        ({ place }) => ({ formula: there(place, `${of("flock", place)}&""`, '""') }),
      ),
    },
    letter: {
      heading: "letter",
      look: "worked",
      holds: asChosen((cell, index) => `IF(${isChosen(cell("name"))},${cell("name")},"${columnLetters(index)}")`, '""'),
    },
    low: percent("low", listed("low", "low")),
    high: percent("high", listed("high", "high")),
    range: percent(
      "range",
      // One spreadsheet rounds a difference otherwise than the others in its last digit, which no chart shows.
      holds(
        (index) => {
          const { low, high } = settled?.inTurn[index] ?? { low: 0, high: 0 };
          return Number((high - low).toFixed(9));
        },
        ({ place, cell }) => ({ formula: there(place, `ROUND(${cell("high")}-${cell("low")},9)`) }),
      ),
    ),
    steadied: percent("steadied share", listed("steadied share", "steadied")),
    ownRange: percent(
      "range of this flock",
      asChosen((cell) => `IF(${isChosen(cell("name"))},${cell("range")},0)`),
    ),
    otherRange: percent(
      "range of the others",
      asChosen((cell) => `IF(${isChosen(cell("name"))},0,${cell("range")})`),
    ),
    // In every row, so that an empty chart has an axis too.
    target: percent("target", () => (settled ? target : { formula: "target" })),
  });
}
