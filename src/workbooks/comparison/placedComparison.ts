import { funnelFunction } from "../../../functions/benchmarking/funnel.ts";
import { shrunkPrevalenceFunction } from "../../../functions/benchmarking/shrunkPrevalence.ts";
import { flockGathers, flocks } from "../tables/flocks.ts";
import { placeGrid } from "../writing/placeGrid.ts";
import { placeList } from "../writing/placeList.ts";
import { placeTable } from "../writing/placeTable.ts";
import { type ComparisonContent, isCollated } from "./comparisonContent.ts";

/** The sheets, in the order of the work. */
export const sheetNames = {
  start: "Start",
  flocks: "Flocks",
  gathers: "Gathers",
  comparison: "Comparison",
  done: "What is done",
  pictures: "Pictures",
  one: "One flock",
  books: "Books",
  figures: "Figures",
} as const;

/** How many flocks there is room for: those that were collated, or those there are and some more, in tens. */
export const roomFor = (content: ComparisonContent): number => {
  const known = content.flocks.length;
  return isCollated(content) ? known : Math.max(40, Math.ceil((known + 5) / 10) * 10);
};

/** The row of the headings of Flocks and of Comparison; the flocks follow, a row each, in both. */
export const headingRow = 8;
const figuresHeading = 4;
const doneHeading = 6;
const doneKeys = [
  "flock",
  "newCases",
  "newCasesLow",
  "newCasesHigh",
  "inTime",
  "inTimeLow",
  "inTimeHigh",
  "inTimeOf",
  "sound",
  "soundLow",
  "soundHigh",
  "soundOf",
  "lesion1",
  "lesion2",
  "lesion3",
  "lesionOther",
  "lesionOf",
  "mgPcu",
  "words",
] as const;

/** The limits of the funnel, by their headings in the list. */
export const limitNames = ["low 95 %", "high 95 %", "low 99.8 %", "high 99.8 %"] as const;

/** Gathers that there is room for, on average of each flock. */
const gathersEach = 6;

/** Where everything stands in a comparison with room for so many flocks, and for the gathers known of them. */
export function placedComparison(rows: number, known = 0) {
  const gathers = Math.max(gathersEach * rows, known);
  const { figures } = sheetNames;
  const after = ({ at, gives }: ReturnType<typeof placeList>): number => at.column + gives.result.headings.length + 1;
  const counted = placeGrid(
    figures,
    ["place", "flock", "lookedAt", "lame", "gathers", "gathersBefore"],
    { row: figuresHeading, column: 0 },
    rows,
  );
  const funnel = placeList(figures, funnelFunction, { row: figuresHeading, column: counted.area.right + 2 });
  const steadied = placeList(figures, shrunkPrevalenceFunction, { row: figuresHeading, column: after(funnel) });
  const limits = placeGrid(
    figures,
    ["seen", ...limitNames, "target"],
    { row: figuresHeading, column: after(steadied) },
    rows,
  );
  const ranked = placeGrid(
    figures,
    ["order", "name", "letter", "low", "high", "range", "steadied", "ownRange", "otherRange", "target"],
    { row: figuresHeading, column: limits.area.right + 2 },
    rows,
  );
  return {
    rows,
    flocks: placeTable(sheetNames.flocks, flocks, { row: headingRow, column: 0 }, rows),
    gathers: placeTable(sheetNames.gathers, flockGathers, { row: headingRow, column: 0 }, gathers),
    besideGathers: placeGrid(
      sheetNames.gathers,
      ["toMend", "row", "counted"],
      { row: headingRow, column: flockGathers.keys.length + 1 },
      gathers,
    ),
    comparison: placeGrid(
      sheetNames.comparison,
      [
        "flock",
        "lookedAt",
        "lame",
        "gathers",
        "share",
        "low",
        "high",
        "funnel",
        "steadied",
        "rank",
        "change",
        "changeLow",
        "changeHigh",
        "p",
        "mgPcu",
        "against",
        "leftOut",
      ],
      { row: headingRow, column: 0 },
      rows,
    ),
    done: placeGrid(sheetNames.done, doneKeys, { row: doneHeading, column: 0 }, rows),
    counted,
    funnel,
    steadied,
    limits,
    ranked,
  } as const;
}

export type PlacedComparison = ReturnType<typeof placedComparison>;
