import { caseTableFunction } from "../../../functions/animals/caseTable.ts";
import { soundCurveFunction } from "../../../functions/animals/soundCurve.ts";
import { lesionMixFunction } from "../../../functions/counting/lesionMix.ts";
import { lameWatchFunction } from "../../../functions/watching/lameWatch.ts";
import { cases } from "../tables/cases.ts";
import { formulas, type GridColumn, type PlacedGrid, placeGrid, writeGrid } from "../writing/placeGrid.ts";
import { dressColumns, placeList, writeList } from "../writing/placeList.ts";
import type { SheetAuthor } from "../writing/sheetAuthor.ts";
import { sheetNames } from "./bookSheets.ts";

/** Where the figures stand that a reader sees, and those that the charts are drawn from, right of the printed page. */
export const figuresRow = 44;
export const cureRow = figuresRow + 16;
export const lesionColumn = 7;
export const rows = { watch: 400, lesions: 12, cure: 384 } as const;

export const watch = placeList(sheetNames.picture, lameWatchFunction, { row: figuresRow, column: 0 });
export const lesionMix = placeList(sheetNames.picture, lesionMixFunction, { row: figuresRow, column: lesionColumn });
export const cure = placeList(sheetNames.picture, soundCurveFunction, { row: cureRow, column: lesionColumn });

const top = 3;
const left = 15;
const months = 12;
const lesionsDrawn = 8;
const daysDrawn = 42;

const grid = <K extends string>(keys: readonly K[], step: number, length: number): PlacedGrid<K> =>
  placeGrid(sheetNames.picture, keys, { row: top, column: left + step }, length);

/**
 * The month of the latest gather; whether each group of the settings was gathered once in it and no other was; and the
 * size of the flock then, 0 where the settings do not say. Sheep sold since are no longer in the groups, so it is never less than what was looked at.
 */
const latest = [
  'IF(COUNT(gather_month)=0,"",MAX(gather_month))',
  'SUM((COUNTIFS(gather_group,Groups[Group]&"",gather_month,latest_month)=1)*(LEN(Groups[Group])>0))=SUM((gather_month=latest_month)*(LEN(gather_looked_at)>0))',
  "IF(SUM(Groups[Sheep now])=0,0,MAX(SUM(Groups[Sheep now]),SUM(month_looked_at)))",
] as const;

const monthKeys = ["month", "label", "share", "usual", "low", "high", "target", "newCases"] as const;
const lesionKeys = ["lesion", "share"] as const;
const dayKeys = ["day", "stillLame", "low", "high", "label", "line"] as const;
type MonthKey = (typeof monthKeys)[number];
type LesionKey = (typeof lesionKeys)[number];
type DayKey = (typeof dayKeys)[number];

/** What the charts are drawn from. */
export const drawn = {
  latest: grid(["latestMonth"], 0, 3),
  months: grid(monthKeys, 1, months),
  lesions: grid(lesionKeys, 10, lesionsDrawn),
  days: grid(dayKeys, 12, daysDrawn + 1),
} as const;

const caseList = placeList(sheetNames.picture, caseTableFunction, { row: top + 1, column: left + 19 });

const monthNames = '"Jan","Feb","Mar","Apr","May","Jun","Jul","Aug","Sep","Oct","Nov","Dec"';

/** What LAMEWATCH says of the month, by the heading; #N/A where nothing is to be drawn. */
const watched = (heading: string, of: string): GridColumn<MonthKey> =>
  formulas(
    heading,
    "workedShare",
    ({ cell }) =>
      `IFERROR(INDEX(${watch.range(of, rows.watch)},MATCH(${cell("month")},${watch.range("date", rows.watch)},0)),NA())`,
  );

const monthColumns: Readonly<Record<MonthKey, GridColumn<MonthKey>>> = {
  month: formulas(
    "month",
    "workedMonth",
    ({ place }) => `EDATE(DATE(YEAR(as_of),MONTH(as_of),1),${place - months + 1})`,
  ),
  label: formulas(
    "label",
    "worked",
    ({ cell }) => `CHOOSE(MONTH(${cell("month")}),${monthNames})&" "&RIGHT(YEAR(${cell("month")}),2)`,
  ),
  share: watched("share lame", "share"),
  usual: watched("usual", "centre"),
  low: watched("low limit", "low limit"),
  high: watched("high limit", "high limit"),
  target: formulas("target", "workedShare", () => "target"),
  newCases: formulas("new cases", "workedCount", ({ cell }) => {
    const first = caseList.range("first", cases.room);
    return `COUNTIFS(${first},">="&${cell("month")},${first},"<"&EDATE(${cell("month")},1))`;
  }),
};

const mix = (heading: string): string => lesionMix.range(heading, rows.lesions);
const lesionColumns: Readonly<Record<LesionKey, GridColumn<LesionKey>>> = {
  lesion: formulas(
    "lesion",
    "worked",
    ({ place }) => `IF(SUM(INDEX(${mix("cases")},${place + 1}))>0,INDEX(${mix("lesion")},${place + 1}),"")`,
  ),
  share: formulas(
    "share of cases",
    "workedShare",
    ({ place }) => `IF(SUM(INDEX(${mix("cases")},${place + 1}))>0,INDEX(${mix("share of cases")},${place + 1}),NA())`,
  ),
};

const curve = (heading: string): string => cure.range(heading, rows.cure);

/** Where the method has no limits, before the first is sound, their lines lie on the curve. */
const limit = (heading: "low" | "high"): GridColumn<DayKey> =>
  formulas(heading, "workedShare", ({ cell }) => {
    const value = `INDEX(${curve(heading)},${cell("line")})`;
    return `IF(LEN(${cell("line")})=0,NA(),IF(ISNUMBER(${value}),${value},INDEX(${curve("share still lame")},${cell("line")})))`;
  });

const dayColumns: Readonly<Record<DayKey, GridColumn<DayKey>>> = {
  day: { heading: "day", look: "workedCount", holds: ({ place }) => place },
  stillLame: formulas(
    "still lame",
    "workedShare",
    ({ cell }) => `IF(LEN(${cell("line")})=0,NA(),INDEX(${curve("share still lame")},${cell("line")}))`,
  ),
  low: limit("low"),
  high: limit("high"),
  // One spreadsheet writes a label under every day, however narrow.
  label: { heading: "label", look: "workedCount", holds: ({ place }) => (place % 7 === 0 ? place : null) },
  // The line of the curve that holds on that day; past the last day watched there is none.
  line: formulas(
    "line",
    "workedCount",
    ({ place }) => `IF(MAX(${curve("day")})<${place},"",IFERROR(MATCH(${place},${curve("day")},1),""))`,
  ),
};

/** Ranges of a fixed size for the charts, since a chart cannot follow a list that grows. */
export function writeDrawn(sheet: SheetAuthor): void {
  dressColumns(sheet, caseList);
  sheet.put({ row: 0, column: left }, "For the charts", "question");
  sheet.put({ row: 1, column: left }, "Nothing to type here. #N/A is meant: no point is drawn there.", "note");
  writeGrid(sheet, drawn.latest, {
    latestMonth: {
      heading: "latest month",
      look: "workedMonth",
      holds: ({ place }) => ({ formula: latest[place] ?? '""', array: true }),
    },
  });
  for (const index of [1, 2]) sheet.put(drawn.latest.at("latestMonth", index), null, "worked");
  writeGrid(sheet, drawn.months, monthColumns);
  writeGrid(sheet, drawn.lesions, lesionColumns);
  writeGrid(sheet, drawn.days, dayColumns);
  writeList(sheet, caseList, {
    question: "Cases",
    rows: 1,
    room: cases.room,
    formula: "FOOT.CASETABLE(case_tag,case_day,gap_days)",
  });
}
