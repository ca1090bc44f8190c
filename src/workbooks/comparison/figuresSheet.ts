import { funnel } from "../../core/benchmarking/funnel.ts";
import { columnLetters } from "../../workbook/address.ts";
import { flocks } from "../tables/flocks.ts";
import type { SheetPlan } from "../writing/authorWorkbook.ts";
import type { Look } from "../writing/looks.ts";
import { orWords } from "../writing/orWords.ts";
import { type GridColumn, type Holds, writeGrid } from "../writing/placeGrid.ts";
import { writeList, writeValues } from "../writing/placeList.ts";
import { cellOn, cellsOn } from "../writing/references.ts";
import type { NameCell, SheetAuthor } from "../writing/sheetAuthor.ts";
import type { ComparedFlocks } from "./comparedFlocks.ts";
import type { ComparisonContent } from "./comparisonContent.ts";
import { gridSizes, type PlacedComparison, sheetNames } from "./placedComparison.ts";

const fewFlocks = "two flocks or more are needed";
const noSpread = "every flock has none or all of its sheep lame";
const sizesQuestion = "Limits by size of flock";

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
    sheet.widths(8, 24, 10, 8, 4, 16, 9, 9, 9, 9, 9, 9, 23, 4, 16);
    writeCounted(sheet, nameCell, placed, compared && { compared, content });
    if (compared) writeSettledLists(sheet, nameCell, placed, compared);
    else {
      writeLists(sheet, placed);
      writeLimits(sheet, nameCell, placed);
    }
    writeRanked(sheet, placed, compared && { compared, content });
    sheet.protect();
    sheet.print({
      sideways: true,
      upTo: { row: counted.area.bottom, column: steadied.at.column + 4 },
      repeat: [top, top],
    });
  },
});

/** A comparison whose rows were read from books, with its figures. */
interface Settled {
  readonly compared: ComparedFlocks;
  readonly content: ComparisonContent;
}

// A row that cannot count is kept out of every list, or it would take the others with it.
function writeCounted(
  sheet: SheetAuthor,
  nameCell: NameCell,
  { counted, comparison }: PlacedComparison,
  collated: Settled | undefined,
): void {
  type Key = Parameters<typeof counted.range>[0];
  const of = (key: "flock" | "lookedAt" | "lame", index: number): string => `INDEX(${flocks.of(key)},${index + 1})`;
  const ifCounted =
    (key: "flock" | "lookedAt" | "lame"): Holds<Key> =>
    ({ place, cell }) => ({ formula: `IF(ISNUMBER(${cell("place")}),${of(key, place)},"")` });
  const asCollated =
    (key: "flock" | "lookedAt" | "lame"): Holds<Key> =>
    ({ place }) =>
      collated?.compared.places[place] === undefined ? null : (collated.content.flocks[place]?.[key] ?? null);
  const holdsOf = collated ? asCollated : ifCounted;
  sheet.put({ row: counted.area.top - 1, column: 0 }, "Flocks that count", "question");
  writeGrid(sheet, counted, {
    place: {
      heading: "place",
      look: "workedCount",
      holds: ({ place, before }) => {
        if (collated) return collated.compared.places[place] ?? null;
        const [name, seen, lame] = [of("flock", place), of("lookedAt", place), of("lame", place)];
        const whole = `${seen}>0,${lame}>=0,${lame}<=${seen},INT(${seen})=${seen},INT(${lame})=${lame}`;
        const once = `SUMPRODUCT((TRIM(Flocks[Flock])=TRIM(${name}))*1)=1`;
        const above = before("place");
        const next = above === undefined ? "1" : `COUNT(${above})+1`;
        return {
          formula: `IF(LEN(${name})=0,"",IF(COUNT(${seen},${lame})<2,"",IF(AND(${whole},${once}),${next},"")))`,
        };
      },
    },
    flock: { heading: "flock", look: "worked", holds: holdsOf("flock") },
    lookedAt: { heading: "looked at", look: "workedCount", holds: holdsOf("lookedAt") },
    lame: { heading: "lame", look: "workedCount", holds: holdsOf("lame") },
  });
  sheet.put({ row: 2, column: 0 }, "all", "label");
  const [seen, lame] = [counted.range("lookedAt"), counted.range("lame")];
  const known = collated?.compared;
  const sums: readonly (readonly [name: string, value: number | undefined, formula: string, look: Look])[] = [
    ["flocks_counted", known?.counted, `COUNT(${counted.range("place")})`, "workedCount"],
    ["share_of_all", known && shareOfAll(known), `IF(SUM(${seen})=0,0,SUM(${lame})/SUM(${seen}))`, "workedPercent"],
    [
      "rows_to_mend",
      known?.flocks.filter((flock) => typeof flock === "string").length,
      `SUMPRODUCT((LEN(${comparison.range("leftOut")})>0)*1)`,
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

/** The lists and limits as values. */
function writeSettledLists(
  sheet: SheetAuthor,
  nameCell: NameCell,
  { funnel: funnelList, steadied, sizes, limits }: PlacedComparison,
  compared: ComparedFlocks,
): void {
  const all = shareOfAll(compared);
  const isMixed = all > 0 && all < 1;
  const alike = compared.counted < 2 ? fewFlocks : noSpread;
  writeValues(sheet, funnelList, "Funnel", typeof compared.funnel === "string" ? alike : compared.funnel);
  writeValues(sheet, steadied, "Steadied shares", compared.inTurn.length === 0 ? alike : compared.inOrder);
  const counted = compared.flocks.flatMap((flock) => (typeof flock === "string" ? [] : flock.seen));
  const [least, most] = counted.reduce(
    ([low, high], seen) => [Math.min(low, seen), Math.max(high, seen)],
    [Number.POSITIVE_INFINITY, 0],
  );
  const drawn =
    counted.length < 2
      ? []
      : Array.from({ length: gridSizes }, (_, step) => Math.round(least + ((most - least) * step) / (gridSizes - 1)));
  const names = drawn.map((_, step) => `step ${step + 1}`);
  sheet.put({ row: sizes.area.top - 1, column: sizes.area.left }, sizesQuestion, "question");
  writeGrid(sheet, sizes, {
    step: { heading: "step", look: "worked", holds: ({ place }) => names[place] ?? null },
    lame: { heading: "lame", look: "workedCount", holds: ({ place }) => (place < drawn.length ? 0 : null) },
    lookedAt: { heading: "looked at", look: "workedCount", holds: ({ place }) => drawn[place] ?? null },
  });
  const none = drawn.map(() => 0);
  writeValues(
    sheet,
    limits,
    "Limits",
    drawn.length === 0 ? fewFlocks : isMixed ? funnel(names, none, drawn, all) : "not worked out",
  );
  nameLimits(sheet, nameCell, limits);
}

function writeLists(sheet: SheetAuthor, { counted, funnel, steadied, rows }: PlacedComparison): void {
  const columns = (["flock", "lame", "lookedAt"] as const).map((key) => counted.range(key)).join(",");
  for (const [question, list, formula] of [
    ["Funnel", funnel, `FOOT.FUNNEL(${columns})`],
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

// The limits for every size between the smallest and the largest flock, so that they show as curves.
function writeLimits(sheet: SheetAuthor, nameCell: NameCell, { counted, sizes, limits }: PlacedComparison): void {
  type Key = Parameters<typeof sizes.range>[0];
  const seen = counted.range("lookedAt");
  const ifEnough =
    (value: (index: number) => string): Holds<Key> =>
    ({ place }) => ({ formula: `IF(flocks_counted<2,"",${value(place)})` });
  sheet.put({ row: sizes.area.top - 1, column: sizes.area.left }, sizesQuestion, "question");
  writeGrid(sheet, sizes, {
    step: { heading: "step", look: "worked", holds: ifEnough((index) => `"step ${index + 1}"`) },
    lame: { heading: "lame", look: "workedCount", holds: ifEnough(() => "0") },
    lookedAt: {
      heading: "looked at",
      look: "workedCount",
      holds: ifEnough((index) => `ROUND(MIN(${seen})+(MAX(${seen})-MIN(${seen}))*${index}/${gridSizes - 1},0)`),
    },
  });
  const grid = (["step", "lame", "lookedAt"] as const).map((key) => sizes.range(key)).join(",");
  writeList(sheet, limits, {
    question: "Limits",
    rows: gridSizes,
    fits: true,
    dress: "rows",
    formula: `IF(flocks_counted<2,"${fewFlocks}",${orWords(`FOOT.FUNNEL(${grid},share_of_all)`, "not worked out")})`,
  });
  nameLimits(sheet, nameCell, limits);
}

function nameLimits(sheet: SheetAuthor, nameCell: NameCell, limits: PlacedComparison["limits"]): void {
  const { left, ...across } = limits.column("flock", gridSizes);
  nameCell("limits_drawn", sheet.name, { ...across, left, right: limits.column("high 99.8 %", gridSizes).right });
}

/** The flocks in order of rank, for the charts; equal ranks in the order of the rows. */
function writeRanked(
  sheet: SheetAuthor,
  { ranked, steadied, rows }: PlacedComparison,
  collated: Settled | undefined,
): void {
  const settled = collated?.compared;
  type Key = Parameters<typeof ranked.range>[0];
  const rank = steadied.range("rank", rows);
  // The place in the list of the flock whose turn it is.
  const of = (heading: string, index: number): string =>
    `INDEX(${steadied.range(heading, rows)},MATCH(${index + 1},${ranked.range("order")},0))`;
  const there = (index: number, formula: string, otherwise = "NA()"): string => {
    return `IF(${index + 1}<=COUNT(${rank}),${formula},${otherwise})`;
  };
  const listed =
    (heading: string, key: "low" | "high" | "steadied" | "share"): Holds<Key> =>
    ({ place }) =>
      settled ? (settled.inTurn[place]?.[key] ?? null) : { formula: there(place, of(heading, place)) };
  const isChosen = (name: string): string => `AND(LEN(chosen_flock)>0,${name}=chosen_flock)`;
  const named =
    (value: string, known: number | undefined): Holds<Key> =>
    ({ place }) =>
      settled ? (place < settled.inTurn.length ? (known ?? null) : null) : { formula: there(place, value) };
  /** What hangs on the flock that is chosen, and so is a formula in a collated comparison too. */
  const asChosen =
    (formula: (cell: (key: Key) => string, index: number) => string, otherwise?: string): Holds<Key> =>
    ({ place, cell }) => {
      if (!settled) return { formula: there(place, formula(cell, place), otherwise) };
      return place < settled.inTurn.length ? { formula: formula(cell, place) } : null;
    };
  const columns: Readonly<Record<Key, GridColumn<Key>>> = {
    order: {
      heading: "order",
      look: "workedCount",
      holds: ({ place }) => {
        if (settled) return settled.turns[place] ?? null;
        const { top, left, right } = steadied.column("rank", rows);
        const here = cellOn(sheet.name, { row: top + place, column: left });
        const ties = `COUNTIF(${cellsOn(sheet.name, { top, left, bottom: top + place, right })},${here})`;
        return { formula: `IF(ISNUMBER(${here}),${here}+${ties}-1,"")` };
      },
    },
    // Joined to nothing, a text that a function gave is found equal to a typed one in every spreadsheet.
    name: {
      heading: "name",
      look: "worked",
      holds: ({ place }) =>
        settled ? (settled.inTurn[place]?.flock ?? null) : { formula: there(place, `${of("flock", place)}&""`, '""') },
    },
    letter: {
      heading: "letter",
      look: "worked",
      holds: asChosen((cell, index) => `IF(${isChosen(cell("name"))},${cell("name")},"${columnLetters(index)}")`, '""'),
    },
    low: { heading: "low", look: "workedPercent", holds: listed("low", "low") },
    high: { heading: "high", look: "workedPercent", holds: listed("high", "high") },
    range: {
      heading: "range",
      look: "workedPercent",
      // One spreadsheet rounds a difference otherwise than the others in its last digit, which no chart shows.
      holds: ({ place, cell }) => {
        const known = settled?.inTurn[place];
        if (settled) return known === undefined ? null : Number((known.high - known.low).toFixed(9));
        return { formula: there(place, `ROUND(${cell("high")}-${cell("low")},9)`) };
      },
    },
    steadied: { heading: "steadied share", look: "workedPercent", holds: listed("steadied share", "steadied") },
    ownRange: {
      heading: "range of this flock",
      look: "workedPercent",
      holds: asChosen((cell) => `IF(${isChosen(cell("name"))},${cell("range")},0)`),
    },
    otherRange: {
      heading: "range of the others",
      look: "workedPercent",
      holds: asChosen((cell) => `IF(${isChosen(cell("name"))},0,${cell("range")})`),
    },
    share: { heading: "share as seen", look: "workedPercent", holds: listed("share", "share") },
    all: { heading: "all", look: "workedPercent", holds: named("share_of_all", settled && shareOfAll(settled)) },
    target: { heading: "target", look: "workedPercent", holds: named("target", collated?.content.target) },
  };
  sheet.put({ row: ranked.area.top - 1, column: ranked.area.left }, "In order", "question");
  writeGrid(sheet, ranked, columns);
}
