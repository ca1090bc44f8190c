import { careDays } from "../collate/careByYear.ts";
import { type DoneFigure, several } from "../collate/doneFigure.ts";
import { type FlockDone, perSheep } from "../collate/flockDone.ts";
import type { SheetPlan } from "../writing/authorWorkbook.ts";
import type { Look } from "../writing/looks.ts";
import { type GridColumn, writeGrid } from "../writing/placeGrid.ts";
import type { ComparisonContent } from "./comparisonContent.ts";
import { type PlacedComparison, sheetNames } from "./placedComparison.ts";

/** Lesions with a column of their own. */
const mostLesions = 3;
const wordsWidth = 56;
/** Letters that fit in a line of that. */
const wordsLength = 62;

type Key = Parameters<PlacedComparison["done"]["range"]>[0];

const notes = [
  `What stands in the flocks' own foot books. New cases: of all animals, for ${perSheep} breeding sheep and a year. Low and high: the range in which the long-run figure lies in 95 of 100 flocks.`,
  `Treated: of cases seen lame, the share treated within ${careDays.treated} days. Sound: the share of treated cases sound within ${careDays.sound} days, those not seen again counted for as long as they were watched.`,
  "Lesions, on the next page: of cases with a lesion written down. mg/PCU: mg of antibiotic in the year for each kg of the flock, by the European unit.",
  "A blank is not known, and never none: the last column says why, and how many cases were left out of which a day is missing, cannot be read or cannot be right, or of which no lesion is written down. Few cases may be few, or few written down.",
] as const;
/** Letters that fit in a line of them. */
const noteLength = 105;

/** A row a flock: what is done about lameness, and why a figure cannot be counted. */
export const doneSheet = ({ flocks, done = [], year }: ComparisonContent, placed: PlacedComparison): SheetPlan => ({
  name: sheetNames.done,
  write(sheet) {
    const { done: grid } = placed;
    const headingRow = grid.area.top;
    sheet.title("What is done");
    sheet.put({ row: 1, column: 0 }, `Year: ${year}`, "subtitle");
    // In the columns of the first page: on paper the first column comes again on the second.
    const { right } = grid.column("soundOf");
    notes.forEach((line, step) => {
      const area = { top: 2 + step, left: 1, bottom: 2 + step, right };
      sheet.dress(area, "wrappedNote");
      sheet.put({ row: area.top, column: 1 }, line);
      sheet.merge(area);
      sheet.rowHeight(area.top, Math.ceil(line.length / noteLength) * 15);
    });
    sheet.rowHeight(headingRow, 62);
    sheet.rowsAside(headingRow + 1);
    writeGrid(sheet, grid, columnsOf(flocks, done));
    done.forEach((one, step) => {
      const lines = Math.ceil(doubtWords(one).length / wordsLength);
      if (lines > 1) sheet.rowHeight(grid.rows.top + step, lines * 15 + 1);
    });
    sheet.emphasize(grid.rows, [`LEN(${grid.cell("flock")})>0`, "line"]);
    sheet.freezeAt({ row: headingRow + 1, column: 1 });
    sheet.protect();
    sheet.newPageAt(grid.column("lesion1").left);
    sheet.print({
      sideways: true,
      upTo: { row: grid.area.bottom, column: grid.area.right },
      repeat: [headingRow, headingRow],
      repeatColumns: 1,
      across: 0,
      scale: 75,
    });
  },
});

type Figure = "newCases" | "inTime" | "sound" | "mgPcu";
type Part = "value" | "low" | "high" | "of";

function columnsOf(
  flocks: ComparisonContent["flocks"],
  done: readonly FlockDone[],
): Readonly<Record<Key, GridColumn<Key>>> {
  const part = (heading: string, width: number, look: Look, figure: Figure, which: Part): GridColumn<Key> => ({
    heading,
    width,
    look,
    holds: ({ place }) => done[place]?.[figure][which] ?? null,
  });
  const share = "besidePercent";
  const named = commonLesions(done);
  const lesion = (step: number): GridColumn<Key> => {
    const name = named[step];
    const holds: GridColumn<Key>["holds"] = ({ place }) =>
      name === undefined ? null : lesionShare(done[place], (found) => found === name);
    return { heading: name ?? "", width: name === undefined ? 3 : 12, look: share, holds };
  };
  return {
    flock: { heading: "flock", width: 24, look: "words", holds: ({ place }) => flocks[place]?.flock ?? null },
    newCases: part(`new cases, ${perSheep} sheep a year`, 10, "besideRate", "newCases", "value"),
    newCasesLow: part("low", 8, "besideRate", "newCases", "low"),
    newCasesHigh: part("high", 8, "besideRate", "newCases", "high"),
    inTime: part(`treated within ${careDays.treated} days`, 10, share, "inTime", "value"),
    inTimeLow: part("low", 8, share, "inTime", "low"),
    inTimeHigh: part("high", 8, share, "inTime", "high"),
    inTimeOf: part("of cases", 7, "besideCount", "inTime", "of"),
    sound: part(`sound within ${careDays.sound} days`, 10, share, "sound", "value"),
    soundLow: part("low", 8, share, "sound", "low"),
    soundHigh: part("high", 8, share, "sound", "high"),
    soundOf: part("of treated", 8, "besideCount", "sound", "of"),
    lesion1: lesion(0),
    lesion2: lesion(1),
    lesion3: lesion(2),
    lesionOther: {
      heading: "other lesions",
      width: 9,
      look: share,
      holds: ({ place }) => lesionShare(done[place], (found) => !named.includes(found)),
    },
    lesionOf: {
      heading: "of cases",
      width: 7,
      look: "besideCount",
      holds: ({ place }) => (done[place] ? lesionCases(done[place]) || null : null),
    },
    mgPcu: part("mg/PCU", 9, "besideRate", "mgPcu", "value"),
    words: {
      heading: "not counted, or left out",
      width: wordsWidth,
      look: "words",
      holds: ({ place }) => (done[place] ? doubtWords(done[place]) : null),
    },
  };
}

const lesionCases = ({ lesions }: FlockDone): number => lesions.reduce((sum, { cases }) => sum + cases, 0);

/** The lesions of the most cases of all flocks together. */
function commonLesions(done: readonly FlockDone[]): readonly string[] {
  const all = new Map<string, number>();
  for (const { lesions } of done) for (const { name, cases } of lesions) all.set(name, (all.get(name) ?? 0) + cases);
  return [...all]
    .sort(([one, many], [other, others]) => others - many || (one < other ? -1 : 1))
    .slice(0, mostLesions)
    .map(([name]) => name);
}

function lesionShare(done: FlockDone | undefined, isWanted: (name: string) => boolean): number | null {
  if (done === undefined || done.lesions.length === 0) return null;
  const wanted = done.lesions.filter(({ name }) => isWanted(name));
  // The share as the pages have it, where it is of one lesion.
  if (wanted.length === 1) return wanted[0]?.share ?? null;
  return wanted.reduce((sum, { cases }) => sum + cases, 0) / lesionCases(done);
}

/** Why figures are missing, each reason once, and how many cases were left out of which. */
function doubtWords(done: FlockDone): string {
  const figures: readonly (readonly [string, DoneFigure])[] = [
    ["new cases", done.newCases],
    ["treated", done.inTime],
    ["sound", done.sound],
    ["mg/PCU", done.mgPcu],
  ];
  const missing = new Map<string, string[]>();
  const say = (what: string, why: string): void => {
    missing.set(why, [...(missing.get(why) ?? []), what]);
  };
  for (const [what, { value, words }] of figures) if (value === undefined) say(what, words);
  if (done.lesions.length === 0) say("lesions", "none is written down in the year");
  const left = figures.flatMap(([what, { leftOut }]) => (leftOut > 0 ? [`${what} ${leftOut}`] : []));
  if (done.withoutLesion > 0 && done.lesions.length > 0) left.push(`lesions ${done.withoutLesion}`);
  if (done.inNoCase > 0) left.push(`all ${several(done.inNoCase, "row")} without a tag or a day`);
  return [
    ...[...missing].map(([why, what]) => `${what.join(", ")}: ${why}`),
    ...(left.length > 0 ? [`Left out: ${left.join(", ")}`] : []),
  ].join(". ");
}
