import { Problem } from "../../cells/problem.ts";
import { type FunnelFlock, funnel } from "../../core/benchmarking/funnel.ts";
import type { ShrunkFlock } from "../../core/benchmarking/shrunkPrevalence.ts";
import { type PrevalenceChange, prevalenceChange } from "../../core/counting/prevalenceChange.ts";
import { prevalenceRange } from "../../core/counting/prevalenceRange.ts";
import { targetCheck } from "../../core/counting/targetCheck.ts";
import type { Interval } from "../../core/statistics/interval.ts";
import { nameKey } from "../../core/words/nameKey.ts";
import { betterThanOthers } from "./betterThanOthers.ts";
import type { ComparisonContent, FlockYear } from "./comparisonContent.ts";
import { countsOfYear, type YearCounts } from "./countsOfYear.ts";
import { type SettledFigures, settledFigures } from "./settledFigures.ts";
import { tooNear } from "./tooNear.ts";

const confidence = 0.95;

/** What is found of a flock that counts. */
export interface ComparedFlock {
  readonly lame: number;
  readonly seen: number;
  /** How many gathers its range allows for; see YearCounts. */
  readonly gathers: YearCounts["gathers"];
  readonly gathersBefore: YearCounts["gathers"];
  readonly share: number;
  readonly range: Interval;
  /** Its turn in the order of ranks, from 1; undefined where nothing can be ranked, as are the next three. */
  readonly turn: number | undefined;
  readonly funnel: FunnelFlock | undefined;
  readonly steadied: ShrunkFlock | undefined;
  /** Of the other flocks the share that it does better than. */
  readonly better: number | undefined;
  /** Undefined where the year before is not known. */
  readonly change: PrevalenceChange | undefined;
  /** The share against the flock's own target, or else that of all. */
  readonly against: string;
}

/** Flocks side by side. */
export interface ComparedFlocks extends SettledFigures {
  /** In the order of the flocks of the content; of one that does not count, why not. */
  readonly flocks: readonly (ComparedFlock | string)[];
  /** The flocks that count, as the funnel has them; else why there is none. */
  readonly funnel: readonly FunnelFlock[] | string;
  readonly lame: number;
  readonly seen: number;
  readonly counted: number;
}

/**
 * All that the sheets and pages of a collated comparison say of its flocks, worked out once.
 *
 * @param wanted - the rows of those of which it is asked, each among all of them; left out for all
 */
export function comparedFlocks(content: ComparisonContent, wanted?: ReadonlySet<number>): ComparedFlocks {
  const settled = settledFigures(content);
  const { places, turns, inTurn } = settled;
  const counted = content.flocks.filter((_, row) => places[row] !== undefined);
  const funnels = funnelOf(counted);
  const better = betterThanOthers(inTurn);
  const flocks = content.flocks.map((flock, row): ComparedFlock | string => {
    const place = places[row];
    const { lame, lookedAt: seen } = flock;
    if (wanted?.has(row) === false) return "not asked for";
    if (place === undefined || lame === undefined || seen === undefined) return whyNot(flock);
    const turn = turns[place - 1];
    const steadied = turn === undefined ? undefined : inTurn[turn - 1];
    const counts = countsOfYear(flock.gathers, content.year, { lame, seen });
    const before = countsBefore(flock, content.year);
    return {
      lame,
      seen,
      gathers: counts.gathers,
      gathersBefore: before?.gathers,
      share: lame / seen,
      range: prevalenceRange(counts.lame, counts.seen, { confidence }),
      turn,
      funnel: typeof funnels === "string" ? undefined : funnels[place - 1],
      steadied,
      better: turn === undefined ? undefined : better[turn - 1],
      change: before && prevalenceChange(before, counts, confidence),
      against: againstOf(flock.target ?? content.target, counts),
    };
  });
  const sum = (key: "lame" | "lookedAt"): number => counted.reduce((total, flock) => total + (flock[key] ?? 0), 0);
  return { ...settled, flocks, funnel: funnels, lame: sum("lame"), seen: sum("lookedAt"), counted: counted.length };
}

function funnelOf(counted: readonly FlockYear[]): readonly FunnelFlock[] | string {
  try {
    return funnel(
      counted.map(({ flock }) => flock),
      counted.map(({ lame = 0 }) => lame),
      counted.map(({ lookedAt = 0 }) => lookedAt),
      undefined,
      true,
    );
  } catch (error) {
    if (error instanceof Problem) return error.message;
    throw error;
  }
}

/** In the words of the sheet whose rows are typed. */
function whyNot({ flock, lookedAt: seen, lame }: FlockYear): string {
  if (nameKey(flock) === "") return "the flock has no name";
  if (seen === undefined || lame === undefined) return "looked at or lame is missing";
  if (lame > seen) return "more lame than looked at";
  if (seen === 0) return "no sheep looked at";
  const isCount = (count: number): boolean => Number.isInteger(count) && count >= 0;
  return isCount(seen) && isCount(lame) ? "the name stands twice" : "not a whole number of sheep";
}

function countsBefore(
  { lameBefore: lame, lookedAtBefore: seen, gathers }: FlockYear,
  year: number | undefined,
): YearCounts | undefined {
  if (lame === undefined || seen === undefined || seen === 0) return undefined;
  return countsOfYear(gathers, year === undefined ? undefined : year - 1, { lame, seen });
}

// A book may hold 5 where 5 % was meant: against that every flock would be fine.
const againstOf = (target: number, { lame, seen }: YearCounts): string =>
  target > 0 && target < 1
    ? targetCheck(lame, seen, { target, confidence }).replace(...tooNear)
    : `not compared: its own target is ${target}, and no share between 0 and 100 %`;
