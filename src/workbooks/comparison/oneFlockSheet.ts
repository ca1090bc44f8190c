import type { ShrunkFlock } from "../../core/benchmarking/shrunkPrevalence.ts";
import { careDays } from "../collate/careByYear.ts";
import { perSheep } from "../collate/flockDone.ts";
import type { SheetPlan } from "../writing/authorWorkbook.ts";
import type { Look } from "../writing/looks.ts";
import { orWords } from "../writing/orWords.ts";
import { placeGrid, writeGrid } from "../writing/placeGrid.ts";
import { oneCell } from "../writing/references.ts";
import type { SheetAuthor } from "../writing/sheetAuthor.ts";
import type { ComparedFlocks } from "./comparedFlocks.ts";
import { letteredChart } from "./comparisonCharts.ts";
import type { ComparisonContent } from "./comparisonContent.ts";
import { type PlacedComparison, sheetNames } from "./placedComparison.ts";

const answersRow = 5;
const chartRows = 19;
/** Flocks side by side in the list. */
const blocks = 2;

/** The same as the formula gives. */
const inPercent = (share: number): string => `${Math.round(1000 * share) / 10} %`;

const percent = (share: string): string => `ROUND(100*${share},1)&" %"`;

/** A page for the farmer of one flock: it names that flock, and the others by letters. */
export const oneFlockSheet = (
  content: ComparisonContent,
  placed: PlacedComparison,
  compared: ComparedFlocks | undefined,
): SheetPlan => ({
  name: sheetNames.one,
  write(sheet, nameCell) {
    const { chosen } = content;
    const collated = compared !== undefined;
    const { rows } = placed;
    sheet.widths(27, 13, 18, 3, 27, 13, 18);
    sheet.title({ formula: 'IF(LEN(chosen_flock)=0,"One flock",chosen_flock)' });
    sheet.put(
      { row: 1, column: 0 },
      {
        formula:
          'IF(flocks_counted=0,"No flocks yet: type them on the sheet Flocks.",IF(LEN(year_compared)=0,"",year_compared&": ")&"your flock among "&flocks_counted&" flocks, the others by letters")',
      },
      "subtitle",
    );
    sheet.rowHeight(1, 24);
    sheet.put({ row: 2, column: 0 }, "Flock (choose)", "label");
    sheet.put({ row: 2, column: 1 }, chosen ?? null, "fieldText");
    sheet.dress({ top: 2, left: 1, bottom: 2, right: 2 }, "fieldText");
    sheet.merge({ top: 2, left: 1, bottom: 2, right: 2 });
    const cell = { row: 2, column: 1 };
    nameCell("chosen_flock", sheet.name, cell);
    sheet.accept(oneCell(cell), {
      of: { list: "flock_list" },
      words: "Choose a flock from the list; it is the table on the sheet Flocks.",
    });
    const orNot = (formula: string): string =>
      collated ? `IFERROR(${formula},"not known")` : orWords(formula, "not known");
    const lines = [...answers(placed, collated), ...(content.done === undefined ? [] : doneAnswers(placed))];
    const chartRow = answersRow + lines.length + 2;
    const listRow = chartRow + chartRows;
    lines.forEach(([label, formula, look], step) => {
      const row = answersRow + step;
      sheet.put({ row, column: 0 }, label, "label");
      sheet.put({ row, column: 1 }, { formula: `IF(LEN(chosen_flock)=0,"",${orNot(formula)})` }, look);
    });
    sheet.chart(
      { row: chartRow, column: 0 },
      ...letteredChart(placed.ranked, "Steadied share lame with its range, lowest first"),
    );
    writeLetters(sheet, listRow, placed, compared);
    sheet.protect();
    const last = listRow + 1 + Math.ceil(rows / blocks);
    sheet.print({ upTo: { row: last - 1, column: 6 }, onOnePage: rows <= 80 });
  },
});

type Answers = readonly (readonly [label: string, formula: string, look: Look])[];

const shareLame = "Share lame";

function answers({ comparison, steadied, rows }: PlacedComparison, collated: boolean): Answers {
  const at = `MATCH(chosen_flock,${comparison.range("flock")},0)`;
  const of = (key: Parameters<typeof comparison.range>[0]): string => `INDEX(${comparison.range(key)},${at})`;
  const shares = steadied.range("steadied share", rows);
  // Joined to nothing, a text that a function gave is found equal to a typed one in every spreadsheet.
  const others = `IF(${steadied.range("flock", rows)}&""=chosen_flock,"",IF(ISNUMBER(${shares}),${shares},""))`;
  // What FLOCKRANK gives, for readers without the functions.
  const beaten = `(SUMPRODUCT((${shares}>${of("steadied")})*2+(${shares}=${of("steadied")})*1)-1)/2/(COUNT(${shares})-1)`;
  const better = collated ? beaten : `FOOT.FLOCKRANK(${of("steadied")},${others})`;
  const change = of("change");
  const ifRanked = (formula: string): string => `IF(ISNUMBER(${of("steadied")}),${formula},"not known")`;
  const lines: Answers = [
    ["Sheep looked at, lame", `${of("lookedAt")}&" looked at, "&${of("lame")}&" lame"`, "worked"],
    [shareLame, of("share"), "figureShare"],
    ["Its range", `${percent(of("low"))}&" to "&${percent(of("high"))}`, "worked"],
    ["Against the target", of("against"), "worked"],
    ["Out of line", ifRanked(`${of("funnel")}&" for so many sheep"`), "worked"],
    [
      "Steadied share, rank",
      ifRanked(`${percent(of("steadied"))}&", rank "&${of("rank")}&" of "&flocks_counted`),
      "worked",
    ],
    ["Better than", ifRanked(`${percent(better)}&" of the other flocks"`), "worked"],
    [
      "Since the year before",
      `IF(ISNUMBER(${change}),ROUND(100*ABS(${change}),1)&IF(${change}<0," fewer"," more")&" lame in each 100 sheep"&IF(${of("changeLow")}*${of("changeHigh")}>0,""," (chance alone may do as much)"),"not known")`,
      "worked",
    ],
    [
      "Antibiotics, mg/PCU",
      `IF(ISNUMBER(${of("mgPcu")}),ROUND(${of("mgPcu")},2)&IF(COUNT(${comparison.range("mgPcu")})<2,"; it is known of no other flock","; half of the flocks used less than "&ROUND(MEDIAN(${comparison.range("mgPcu")}),2)),"not known")`,
      "worked",
    ],
  ];
  const why = of("leftOut");
  return lines.map(([label, formula, look]) => {
    const said = label === shareLame ? `"not counted: "&${why}` : '"not counted"';
    return [label, `IF(LEN(${why})=0,${formula},${said})`, look];
  });
}

/** What is done in the flock, of a comparison that was collated. */
function doneAnswers({ done }: PlacedComparison): Answers {
  type Key = Parameters<typeof done.range>[0];
  const of = (key: Key): string => `INDEX(${done.range(key)},MATCH(chosen_flock,${done.range("flock")},0))`;
  const orNone = (key: Key, words: string): string => `IF(ISNUMBER(${of(key)}),${words},"not counted")`;
  const shareOf = (key: "inTime" | "sound", cases: Key, what: string): string =>
    orNone(key, `${percent(of(key))}&" of "&${of(cases)}&" ${what}"`);
  return [
    ["New cases", orNone("newCases", `ROUND(${of("newCases")},1)&" a year for ${perSheep} breeding sheep"`), "worked"],
    [`Treated in ${careDays.treated} days`, shareOf("inTime", "inTimeOf", "cases"), "worked"],
    [`Sound in ${careDays.sound} days`, shareOf("sound", "soundOf", "treated cases"), "worked"],
  ];
}

function writeLetters(
  sheet: SheetAuthor,
  listRow: number,
  { ranked, rows }: PlacedComparison,
  compared: ComparedFlocks | undefined,
): void {
  sheet.put({ row: listRow - 1, column: 0 }, "All flocks in order of their steadied share", "question");
  sheet.rowHeight(listRow, 32);
  if (compared) sheet.rowsAside(listRow + 1);
  const length = Math.ceil(rows / blocks);
  for (let block = 0; block < blocks; block++) {
    const first = block * length;
    const grid = placeGrid(
      sheet.name,
      ["flock", "share", "range"],
      { row: listRow, column: block * 4 },
      Math.min(length, rows - first),
    );
    type Of = (key: Parameters<typeof ranked.range>[0]) => string;
    const shown =
      (formula: (of: Of) => string, known?: (flock: ShrunkFlock) => string | number) =>
      ({ place }: { readonly place: number }) => {
        if (compared) {
          const flock = compared.inTurn[first + place];
          if (flock === undefined) return null;
          if (known) return known(flock);
        }
        const of: Of = (key) => `INDEX(${ranked.range(key)},${first + place + 1})`;
        return { formula: `IF(LEN(${of("letter")})=0,"",${formula(of)})` };
      };
    writeGrid(sheet, grid, {
      flock: { heading: "flock", look: "worked", holds: shown((of) => of("letter")) },
      share: {
        heading: "steadied share",
        look: "workedPercent",
        holds: shown(
          (of) => of("steadied"),
          ({ steadied }) => steadied,
        ),
      },
      range: {
        heading: "range",
        look: "workedCount",
        holds: shown(
          (of) => `${percent(of("low"))}&" to "&${percent(of("high"))}`,
          ({ low, high }) => `${inPercent(low)} to ${inPercent(high)}`,
        ),
      },
    });
    sheet.emphasize(
      grid.rows,
      [`AND(LEN(chosen_flock)>0,${grid.cell("flock")}=chosen_flock)`, "strong"],
      [`LEN(${grid.cell("flock")})>0`, "line"],
    );
  }
}
