import type { DuckDBConnection } from "@duckdb/node-api";
import { type Day, dayOf, isoText } from "../../cells/day.ts";
import { funnel } from "../../core/benchmarking/funnel.ts";
import { shrunkPrevalence } from "../../core/benchmarking/shrunkPrevalence.ts";
import type { Interval } from "../../core/statistics/interval.ts";
import { sumOf } from "../../core/statistics/sumOf.ts";
import type { FlockRecord } from "../../workbooks/collate/flockRecord.ts";
import { byFlock } from "./byFlock.ts";
import { type DoneOrWhyNot, flocksDone } from "./flocksDone.ts";
import { countCases, type GatherDays, rangeOf, type Signals, signalsOf, type WrittenTag } from "./flockTally.ts";
import type { LoadedRecords, UnreadTag } from "./loadRecords.ts";

/** By what the lines of the answer are told apart. */
export type By = "flock" | "month" | "group";

/** One line of the answer. Undefined is not known, and stands as a blank. */
export interface ComparedLine {
  readonly flock: string;
  /** The month as 2026-03, or the group; undefined in a line a flock. */
  readonly part: string | undefined;
  readonly lookedAt: number | undefined;
  readonly lame: number | undefined;
  readonly share: number | undefined;
  readonly range: Interval | undefined;
  readonly funnel: string | undefined;
  readonly steadied: (Interval & { readonly share: number; readonly rank: number }) | undefined;
  readonly cases: number | undefined;
  readonly signals: Signals | undefined;
  /** Antibiotics; undefined in lines that are not of a whole flock. */
  readonly mgPcu: { readonly value: number | undefined; readonly words: string } | undefined;
  readonly leftOut: string;
}

export interface Compared {
  readonly year: number;
  readonly lines: readonly ComparedLine[];
  readonly cases: number;
  readonly caseRecords: number;
  readonly gathers: number;
  /** What is done in each flock; none in lines that are not of whole flocks. */
  readonly done: readonly DoneOrWhyNot[];
  /** The gathers of all years of the flocks that get a page. */
  readonly gathersOf: ReadonlyMap<number, GatherDays>;
  /** Some of the tags that cannot be read. */
  readonly unreadTags: readonly UnreadTag[];
}

/** The latest year in which more than half of the flocks have gathers, or the latest of all. */
export async function usualYear(duck: DuckDBConnection): Promise<number | undefined> {
  const rows = await (
    await duck.run(`SELECT ${yearOf} AS y, count(DISTINCT flock)::INTEGER, (SELECT count(DISTINCT flock) FROM gathers WHERE ok)::INTEGER
      FROM gathers WHERE ok AND flock IS NOT NULL GROUP BY y ORDER BY y DESC`)
  ).getRows();
  const common = rows.find(([, flocks, all]) => Number(flocks) * 2 > Number(all)) ?? rows[0];
  return common === undefined ? undefined : Number(common[0]);
}

const yearOf = "year(DATE '1899-12-30' + day)";

interface FlockCounts {
  readonly watched: Signals | undefined;
  readonly ofYear: GatherDays;
}

interface CountOptions {
  readonly year: number;
  readonly by: By;
  /** Most days between two records of one case. */
  readonly gapDays: number;
  /** What is kept of each foot book that is counted, by the key of its flock. */
  readonly books: ReadonlyMap<string, FlockRecord>;
  /** The flocks that get a page. */
  readonly pages: ReadonlySet<number>;
}

/**
 * Compares the loaded flocks over one year. The database counts; ranges, words, ranks, cases and signals are those of the
 * functions.
 */
export async function countFlocks(
  duck: DuckDBConnection,
  loaded: LoadedRecords,
  { year, by, gapDays, books, pages }: CountOptions,
  progress: (words: string) => void,
): Promise<Compared> {
  const { flocks, unnamed, hasTexts } = loaded;
  const [from, to] = [dayOf(`${year}-01-01`), dayOf(`${year}-12-31`)];
  const gathersOf = new Map<number, GatherDays>();
  const counted = new Map<number, FlockCounts>();
  let gathers = 0;
  progress("Gathers …");
  await byFlock(
    duck,
    "SELECT flock, day, sum(seen)::INTEGER, sum(lame)::INTEGER FROM gathers WHERE ok AND flock IS NOT NULL GROUP BY ALL ORDER BY flock, day",
    (flock, columns) => {
      const [days = [], seen = [], lame = []] = columns as readonly (readonly number[])[];
      gathers += days.length;
      const all = { days, seen, lame };
      const ofYear = within(all, from, to);
      if (pages.has(flock)) gathersOf.set(flock, all);
      counted.set(flock, { ofYear, watched: by === "flock" ? signalsOf(all, from, to) : undefined });
    },
  );
  progress("Cases …");
  const caseCounts = new Map<number, { readonly begun: readonly Day[]; readonly doubted: number }>();
  const unreadTags: UnreadTag[] = [];
  let [cases, caseRecords] = [0, 0];
  await byFlock(
    duck,
    `SELECT flock, day, number ${hasTexts ? ", head, rest" : ""} FROM records WHERE flock IS NOT NULL ORDER BY flock`,
    (flock, columns) => {
      const [days = [], numbers = [], heads, rests] = columns as CaseColumns;
      const tags = heads === undefined || rests === undefined ? numbers : tagsOf(numbers, heads, rests);
      const { begun, doubted, unread } = countCases(tags, days, gapDays);
      cases += begun.length;
      caseRecords += tags.length;
      if (unreadTags.length < 5) unreadTags.push(...unread.slice(0, 5).map((tag) => ({ flock, tag })));
      caseCounts.set(flock, { begun: begun.filter((day) => day >= from && day <= to), doubted });
    },
  );
  const unreadGathers = await perFlock(duck, `SELECT flock, count(*)::INTEGER FROM gathers WHERE NOT ok ${andFlock}`);
  const left = flocks.map((_, flock) =>
    leftOutOf(unreadGathers.get(flock) ?? 0, caseCounts.get(flock)?.doubted ?? 0, unnamed),
  );
  const done = by === "flock" ? await flocksDone(duck, loaded, books, year) : [];
  const lines =
    by === "flock"
      ? flockLines(flocks, counted, caseCounts, done, left)
      : await partLines(duck, flocks, { by, from, to }, by === "month" ? caseCounts : undefined, left);
  return { year, lines, cases, caseRecords, gathers, done, gathersOf, unreadTags: unreadTags.slice(0, 5) };
}

type CaseColumns = readonly [
  days: (Day | null)[],
  numbers: (number | null)[],
  heads?: (string | null)[],
  rests?: (string | null)[],
];

const tagsOf = (
  numbers: readonly (number | null)[],
  heads: readonly (string | null)[],
  rests: readonly (string | null)[],
): (WrittenTag | null)[] =>
  numbers.map((number, index) => {
    if (number !== null) return number;
    const head = heads[index] ?? null;
    return head === null ? null : head + (rests[index] ?? "");
  });

const andFlock = "AND flock IS NOT NULL GROUP BY flock";

function flockLines(
  flocks: readonly string[],
  counted: ReadonlyMap<number, FlockCounts>,
  caseCounts: ReadonlyMap<number, { readonly begun: readonly Day[] }>,
  done: readonly DoneOrWhyNot[],
  left: readonly string[],
): readonly ComparedLine[] {
  const sums = flocks.map((_, flock) => {
    const { seen, lame } = counted.get(flock)?.ofYear ?? nothingSeen;
    return { flock, seen: sumOf(seen), lame: sumOf(lame), looked: seen.length > 0 };
  });
  const looked = sums.filter(({ seen }) => seen > 0);
  const columns = [
    looked.map(({ flock }) => String(flock)),
    looked.map(({ lame }) => lame),
    looked.map(({ seen }) => seen),
  ] as const;
  const apart = looked.length > 1;
  const words = apart ? funnel(...columns, undefined, true) : [];
  // The same words as a comparison gives: without a spread to learn from there is nothing to steady.
  const isMixed = looked.some(({ lame }) => lame > 0) && looked.some(({ lame, seen }) => lame < seen);
  const steadied = apart && isMixed ? shrunkPrevalence(...columns, 0.95) : [];
  const placeOf = new Map(looked.map(({ flock }, index) => [flock, index]));
  return sums.map(({ flock, seen, lame, looked: hasGathers }): ComparedLine => {
    const place = placeOf.get(flock);
    const here = place === undefined ? undefined : steadied[place];
    const counts = counted.get(flock);
    return {
      flock: flocks[flock] ?? "",
      part: undefined,
      lookedAt: hasGathers ? seen : undefined,
      lame: hasGathers ? lame : undefined,
      share: seen > 0 ? lame / seen : undefined,
      range: counts && rangeOf(counts.ofYear),
      funnel: place === undefined ? undefined : words[place]?.word,
      steadied: here && { share: here.steadied, low: here.low, high: here.high, rank: here.rank },
      cases: caseCounts.get(flock)?.begun.length,
      signals: counts?.watched,
      mgPcu: mgPcuOf(done[flock] ?? ""),
      leftOut: left[flock] ?? "",
    };
  });
}

const mgPcuOf = (done: DoneOrWhyNot): ComparedLine["mgPcu"] =>
  typeof done === "string" ? { value: undefined, words: done } : done.mgPcu;

async function partLines(
  duck: DuckDBConnection,
  flocks: readonly string[],
  { by, from, to }: { readonly by: "month" | "group"; readonly from: Day; readonly to: Day },
  caseCounts: ReadonlyMap<number, { readonly begun: readonly Day[] }> | undefined,
  left: readonly string[],
): Promise<readonly ComparedLine[]> {
  const ofFlock = new Map<number, readonly ComparedLine[]>();
  const part = by === "month" ? "strftime(DATE '1899-12-30' + day, '%Y-%m')" : "grp";
  await byFlock(
    duck,
    `SELECT flock, ${part} AS part, day, sum(seen)::INTEGER, sum(lame)::INTEGER FROM gathers
      WHERE ok AND flock IS NOT NULL AND day BETWEEN ${from} AND ${to} GROUP BY ALL ORDER BY flock, part NULLS LAST, day`,
    (flock, columns) => {
      const parts = columns[0] as readonly (string | null)[];
      const [, days = [], seen = [], lame = []] = columns as readonly (readonly number[])[];
      ofFlock.set(flock, linesOf(flock, parts, { days, seen, lame }));
    },
  );
  // A flock with cases and without a gather has its lines too.
  for (const flock of caseCounts?.keys() ?? [])
    if (!ofFlock.has(flock)) ofFlock.set(flock, linesOf(flock, [], nothingSeen));
  return flocks.flatMap((_, flock) => ofFlock.get(flock) ?? []);

  function linesOf(flock: number, parts: readonly (string | null)[], gathers: GatherDays): readonly ComparedLine[] {
    const begun = caseCounts?.get(flock)?.begun.map((day) => isoText(day).slice(0, 7));
    const places = new Map<string | null, number[]>();
    parts.forEach((name, index) => {
      const known = places.get(name);
      if (known) known.push(index);
      else places.set(name, [index]);
    });
    // A month with cases and without a gather has a line too.
    for (const month of begun ?? []) if (!places.has(month)) places.set(month, []);
    const inOrder = [...places].sort(([one], [other]) =>
      one === null ? 1 : other === null ? -1 : one < other ? -1 : 1,
    );
    return inOrder.map(([name, rows]) => {
      const of = (column: readonly number[]): number[] => rows.map((index) => column[index] as number);
      const here = { days: of(gathers.days), seen: of(gathers.seen), lame: of(gathers.lame) };
      const [all, ill] = [sumOf(here.seen), sumOf(here.lame)];
      return {
        flock: flocks[flock] ?? "",
        part: name ?? "no group",
        lookedAt: rows.length > 0 ? all : undefined,
        lame: rows.length > 0 ? ill : undefined,
        share: all > 0 ? ill / all : undefined,
        range: rangeOf(here),
        funnel: undefined,
        steadied: undefined,
        cases: begun?.filter((month) => month === name).length,
        signals: undefined,
        mgPcu: undefined,
        leftOut: left[flock] ?? "",
      };
    });
  }
}

const nothingSeen: GatherDays = { days: [], seen: [], lame: [] };

/** The days are in order. */
function within({ days, seen, lame }: GatherDays, from: Day, to: Day): GatherDays {
  let [begin, end] = [0, days.length];
  while (begin < end && (days[begin] as Day) < from) begin++;
  while (end > begin && (days[end - 1] as Day) > to) end--;
  return { days: days.slice(begin, end), seen: seen.slice(begin, end), lame: lame.slice(begin, end) };
}

const rowsOf = (count: number, what: string): string => `${count} ${what}${count === 1 ? "" : "s"}`;

function leftOutOf(gathers: number, cases: number, unnamed: LoadedRecords["unnamed"]): string {
  const parts: string[] = [];
  if (gathers > 0) parts.push(`${rowsOf(gathers, "gather")} cannot be read and not counted`);
  if (cases > 0) parts.push(`${rowsOf(cases, "case record")} cannot be read: the cases are those that the others show`);
  if (unnamed.gathers + unnamed.cases > 0)
    parts.push(`${rowsOf(unnamed.gathers + unnamed.cases, "record")} without a flock may be of this one`);
  return parts.join("; ");
}

async function perFlock(duck: DuckDBConnection, sql: string): Promise<ReadonlyMap<number, number>> {
  return new Map((await (await duck.run(sql)).getRows()).map(([flock, count]) => [Number(flock), Number(count)]));
}
