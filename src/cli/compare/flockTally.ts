import type { Day } from "../../cells/day.ts";
import { isoText } from "../../cells/day.ts";
import { Doubt } from "../../cells/doubt.ts";
import { Problem } from "../../cells/problem.ts";
import { caseTable } from "../../core/animals/caseTable.ts";
import { prevalenceRange } from "../../core/counting/prevalenceRange.ts";
import type { Interval } from "../../core/statistics/interval.ts";
import { lameWatch } from "../../core/watching/lameWatch.ts";
import { type Tag, tagKey } from "../../core/words/tagKey.ts";

/** The sheep looked at on each day, the days in order. */
export interface GatherDays {
  readonly days: readonly Day[];
  readonly seen: readonly number[];
  readonly lame: readonly number[];
}

const confidence = 0.95;

/**
 * The range of a share from the gathers of one flock, as `FOOT.PREVRANGE(lame, seen, , , , , dates)` gives it; undefined
 * where no sheep were looked at.
 */
export function rangeOf({ days, seen, lame }: GatherDays): Interval | undefined {
  if (seen.every((count) => count === 0)) return undefined;
  return prevalenceRange(lame, seen, { confidence, dates: days });
}

export interface Signals {
  /** How many gathers gave a signal; undefined where none could be watched. */
  readonly count: number | undefined;
  /** The last of them, or why none could be watched. */
  readonly last: string;
}

/** What `FOOT.LAMEWATCH(dates, lame, seen)` says of the days from one to another. */
export function signalsOf({ days, seen, lame }: GatherDays, from: Day, to: Day): Signals {
  // A gather of which no sheep were looked at has no share.
  const of = (column: readonly number[]): readonly number[] => column.filter((_, index) => (seen[index] ?? 0) > 0);
  if (of(days).length === 0) return { count: undefined, last: "no gather with sheep looked at" };
  try {
    const signals = lameWatch(of(days), of(lame), of(seen)).filter(
      ({ date, signal }) => signal !== "" && date >= from && date <= to,
    );
    const last = signals.at(-1);
    return { count: signals.length, last: last === undefined ? "" : `${isoText(last.date)}: ${last.signal}` };
  } catch (error) {
    if (error instanceof Problem) return { count: undefined, last: error.message };
    throw error;
  }
}

export interface CountedCases {
  /** The first day of each case. */
  readonly begun: readonly Day[];
  /** Records of which tag or day cannot be read. */
  readonly doubted: number;
  /** Tags that cannot be read. */
  readonly unread: readonly WrittenTag[];
}

const blankTag = new Doubt("tags", { what: "it is blank, but the row holds a record", mend: "enter the tag" });
const noDay = new Doubt("dates", { what: "is not a date", mend: "enter a real date" });

/** A tag as text, or a number where it was kept as one or is an electronic number of 15 digits. */
export type WrittenTag = string | number;

/** The cases of one flock, as `FOOT.CASETABLE(tags, dates, gap_days)` tells them apart. */
export function countCases(
  tags: readonly (WrittenTag | null)[],
  days: readonly (Day | null)[],
  gapDays: number,
): CountedCases {
  const met = new Map<WrittenTag, Tag | Doubt>();
  const unread: WrittenTag[] = [];
  const tagOf = (written: WrittenTag | null): Tag | Doubt => {
    // A spreadsheet may have made a 0 of a blank, and no animal is called 0.
    if (written === null || written === 0) return blankTag;
    const known = met.get(written);
    if (known !== undefined) return known;
    const tag = readTag(written);
    if (tag instanceof Doubt) unread.push(written);
    met.set(written, tag);
    return tag;
  };
  const records = { tags: tags.map(tagOf), dates: days.map((day) => day ?? noDay) };
  const begun: Day[] = [];
  let doubted = 0;
  const { count, number, first } = caseTable(records, gapDays, undefined, (index) => index + 1);
  for (let line = 0; line < count; line++)
    if (number(line) === "not known") doubted++;
    else begun.push(first(line) as Day);
  return { begun, doubted, unread };
}

function readTag(written: WrittenTag): Tag | Doubt {
  try {
    return { key: tagKey(written), shown: String(written) };
  } catch (error) {
    if (error instanceof Problem) return new Doubt("tags", error.fault);
    throw error;
  }
}
