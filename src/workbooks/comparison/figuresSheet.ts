import { columnLetters } from "../../workbook/address.ts";
import { flocks } from "../tables/flocks.ts";
import type { SheetPlan } from "../writing/authorWorkbook.ts";
import type { Look } from "../writing/looks.ts";
import { orWords } from "../writing/orWords.ts";
import { type GridColumn, type Holds, writeGrid } from "../writing/placeGrid.ts";
import { writeList } from "../writing/placeList.ts";
import { cellOn, cellsOn } from "../writing/references.ts";
import type { NameCell, SheetAuthor } from "../writing/sheetAuthor.ts";
import type { ComparisonContent } from "./comparisonContent.ts";
import { gridSizes, type PlacedComparison, sheetNames } from "./placedComparison.ts";
import { type SettledFigures, settledFigures } from "./settledFigures.ts";

const fewFlocks = "two flocks or more are needed";

/** The lists that everything is drawn from, in places that do not move. */
export const figuresSheet = (content: ComparisonContent, placed: PlacedComparison): SheetPlan => ({
  name: sheetNames.figures,
  write(sheet, nameCell) {
    const settled = settledFigures(content);
    const { counted, steadied } = placed;
    const { top } = counted.area;
    sheet.title("Figures");
    sheet.put({ row: 1, column: 0 }, "Nothing to type here. #N/A is meant: it leaves a gap in a chart.", "note");
    if (settled)
      sheet.put(
        { row: 1, column: 5 },
        "Which flocks count, and their order, stand as they were when the books were collated.",
        "note",
      );
    sheet.widths(8, 24, 10, 8, 4, 16, 9, 9, 9, 9, 9, 9, 23, 4, 16);
    writeCounted(sheet, nameCell, placed, settled && { settled, content });
    writeLists(sheet, placed);
    writeLimits(sheet, nameCell, placed);
    writeRanked(sheet, placed, settled);
    sheet.protect();
    sheet.print({
      sideways: true,
      upTo: { row: counted.area.bottom - 1, column: steadied.at.column + 4 },
      repeat: [top, top],
    });
  },
});

// A row that cannot count is kept out of every list, or it would take the others with it.
function writeCounted(
  sheet: SheetAuthor,
  nameCell: NameCell,
  { counted, comparison }: PlacedComparison,
  collated: { readonly settled: SettledFigures; readonly content: ComparisonContent } | undefined,
): void {
  type Key = Parameters<typeof counted.range>[0];
  const of = (key: "flock" | "lookedAt" | "lame", place: number): string => `INDEX(${flocks.of(key)},${place + 1})`;
  const ifCounted =
    (key: "flock" | "lookedAt" | "lame"): Holds<Key> =>
    ({ place, cell }) => ({ formula: `IF(ISNUMBER(${cell("place")}),${of(key, place)},"")` });
  const asCollated =
    (key: "flock" | "lookedAt" | "lame"): Holds<Key> =>
    ({ place }) =>
      collated?.settled.places[place] === undefined ? null : (collated.content.flocks[place]?.[key] ?? null);
  const holdsOf = collated ? asCollated : ifCounted;
  sheet.put({ row: counted.area.top - 1, column: 0 }, "Flocks that count", "question");
  writeGrid(sheet, counted, {
    place: {
      heading: "place",
      look: "workedCount",
      holds: ({ place, before, cell }) => {
        if (collated) {
          const known = collated.settled.places[place];
          if (known === undefined) return null;
          // A row that was changed afterwards no longer counts: its figures would be those of the old counts.
          const same = (["flock", "lookedAt", "lame"] as const).map((key) => `${of(key, place)}=${cell(key)}`);
          return { formula: `IF(AND(${same.join(",")}),${known},"")` };
        }
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
  const sums: readonly (readonly [name: string, formula: string, look: Look])[] = [
    ["flocks_counted", `COUNT(${counted.range("place")})`, "workedCount"],
    ["share_of_all", `IF(SUM(${seen})=0,0,SUM(${lame})/SUM(${seen}))`, "workedPercent"],
    ["rows_to_mend", `SUMPRODUCT((LEN(${comparison.range("leftOut")})>0)*1)`, "workedCount"],
  ];
  sums.forEach(([name, formula, look], step) => {
    const at = { row: 2, column: 1 + step };
    sheet.put(at, { formula }, look);
    nameCell(name, sheet.name, at);
  });
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
      dress: "rows",
      formula: `IF(flocks_counted<2,"${fewFlocks}",${orWords(formula, "every flock has none or all of its sheep lame")})`,
    });
}

// The limits for every size between the smallest and the largest flock, so that they show as curves.
function writeLimits(sheet: SheetAuthor, nameCell: NameCell, { counted, sizes, limits }: PlacedComparison): void {
  type Key = Parameters<typeof sizes.range>[0];
  const seen = counted.range("lookedAt");
  const ifEnough =
    (value: (place: number) => string): Holds<Key> =>
    ({ place }) => ({ formula: `IF(flocks_counted<2,"",${value(place)})` });
  sheet.put({ row: sizes.area.top - 1, column: sizes.area.left }, "Limits by size of flock", "question");
  writeGrid(sheet, sizes, {
    step: { heading: "step", look: "worked", holds: ifEnough((place) => `"step ${place + 1}"`) },
    lame: { heading: "lame", look: "workedCount", holds: ifEnough(() => "0") },
    lookedAt: {
      heading: "looked at",
      look: "workedCount",
      holds: ifEnough((place) => `ROUND(MIN(${seen})+(MAX(${seen})-MIN(${seen}))*${place}/${gridSizes - 1},0)`),
    },
  });
  const grid = (["step", "lame", "lookedAt"] as const).map((key) => sizes.range(key)).join(",");
  writeList(sheet, limits, {
    question: "Limits",
    rows: gridSizes,
    dress: "rows",
    formula: `IF(flocks_counted<2,"${fewFlocks}",${orWords(`FOOT.FUNNEL(${grid},share_of_all)`, "not worked out")})`,
  });
  const { left, ...across } = limits.column("flock", gridSizes);
  nameCell("limits_drawn", sheet.name, { ...across, left, right: limits.column("high 99.8 %", gridSizes).right });
}

/** The flocks in order of rank, for the charts; equal ranks in the order of the rows. */
function writeRanked(
  sheet: SheetAuthor,
  { ranked, steadied, rows }: PlacedComparison,
  settled: SettledFigures | undefined,
): void {
  type Key = Parameters<typeof ranked.range>[0];
  const rank = steadied.range("rank", rows);
  // The place in the list of the flock whose turn it is.
  const of = (heading: string, place: number): string =>
    `INDEX(${steadied.range(heading, rows)},MATCH(${place + 1},${ranked.range("order")},0))`;
  const there = (place: number, formula: string, otherwise = "NA()"): string => {
    if (settled) return place < settled.inTurn.length ? formula : otherwise;
    return `IF(${place + 1}<=COUNT(${rank}),${formula},${otherwise})`;
  };
  const listed =
    (heading: string, key: "low" | "high" | "steadied" | "share"): Holds<Key> =>
    ({ place }) =>
      settled?.inTurn[place]?.[key] ?? { formula: there(place, of(heading, place)) };
  const isChosen = (name: string): string => `AND(LEN(chosen_flock)>0,${name}=chosen_flock)`;
  const named =
    (value: string): Holds<Key> =>
    ({ place }) => ({ formula: there(place, value) });
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
        settled?.inTurn[place]?.flock ?? { formula: there(place, `${of("flock", place)}&""`, '""') },
    },
    letter: {
      heading: "letter",
      look: "worked",
      holds: ({ place, cell }) => ({
        formula: there(place, `IF(${isChosen(cell("name"))},${cell("name")},"${columnLetters(place)}")`, '""'),
      }),
    },
    low: { heading: "low", look: "workedPercent", holds: listed("low", "low") },
    high: { heading: "high", look: "workedPercent", holds: listed("high", "high") },
    range: {
      heading: "range",
      look: "workedPercent",
      // One spreadsheet rounds a difference otherwise than the others in its last digit, which no chart shows.
      holds: ({ place, cell }) => {
        const known = settled?.inTurn[place];
        if (known) return Number((known.high - known.low).toFixed(9));
        return { formula: there(place, `ROUND(${cell("high")}-${cell("low")},9)`) };
      },
    },
    steadied: { heading: "steadied share", look: "workedPercent", holds: listed("steadied share", "steadied") },
    ownRange: {
      heading: "range of this flock",
      look: "workedPercent",
      holds: ({ place, cell }) => ({ formula: there(place, `IF(${isChosen(cell("name"))},${cell("range")},0)`) }),
    },
    otherRange: {
      heading: "range of the others",
      look: "workedPercent",
      holds: ({ place, cell }) => ({ formula: there(place, `IF(${isChosen(cell("name"))},0,${cell("range")})`) }),
    },
    share: { heading: "share as seen", look: "workedPercent", holds: listed("share", "share") },
    all: { heading: "all", look: "workedPercent", holds: named("share_of_all") },
    target: { heading: "target", look: "workedPercent", holds: named("target") },
  };
  sheet.put({ row: ranked.area.top - 1, column: ranked.area.left }, "In order", "question");
  writeGrid(sheet, ranked, columns);
}
