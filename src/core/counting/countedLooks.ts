import type { Day } from "../../cells/day.ts";
import { Problem } from "../../cells/problem.ts";
import { effectiveSeen } from "./effectiveSeen.ts";
import { type Gathers, gathersOf } from "./gathersOf.ts";
import { pooledPrevalence } from "./pooledPrevalence.ts";

/** What a range allows for: the spread between gathers and chance, or chance alone. */
export const spreadWords = ["gathers", "chance"] as const;
export type Spread = (typeof spreadWords)[number];

export interface LookChoice {
  /** 0 < confidence < 1. */
  readonly confidence: number;
  /** "gathers" unless said, or unless a flock size makes the rows parts of one look. */
  readonly spread?: Spread | undefined;
  /** The day of each row, where a gather has several; left out, each row is a gather. */
  readonly dates?: readonly (Day | undefined)[] | undefined;
  /** Sheep in the flock, when its share on the day of one look is asked for. */
  readonly flockSize?: number | undefined;
}

/** The rows of a flock, pooled. */
export interface Looks {
  readonly lame: number;
  readonly seen: number;
  readonly share: number;
  readonly gathers: Gathers;
  /** To how many separate looks at a sheep they amount: `seen`, or fewer where the spread between gathers counts. */
  readonly effective: number;
}

/**
 * The sheep seen in all rows, and to how many separate looks they amount.
 *
 * @throws Problem when a row has more lame than seen, or a flock size is given beside several gathers; #N/A without sheep
 * @example
 * countedLooks([4, 12], [100, 100], { confidence: 0.95, spread: "chance" }).effective // → 200
 */
export function countedLooks(lame: readonly number[], seen: readonly number[], choice: LookChoice): Looks {
  const { flockSize, spread, dates, confidence } = choice;
  const pooled = pooledPrevalence(lame, seen);
  const gathers = gathersOf(lame, seen, dates);
  if (flockSize !== undefined && gathers.seen.length > 1) {
    if (dates !== undefined) {
      throw new Problem(
        `flock_size is for one look at the flock, and the dates show ${gathers.seen.length}; leave one of the two out`,
        { argument: "dates" },
      );
    }
    if (spread === "gathers") {
      throw new Problem(
        '"gathers" is for several gathers, and flock_size for one look at the flock in parts; leave one of the two out',
        { argument: "spread" },
      );
    }
  }
  const plain = spread === "chance" || flockSize !== undefined;
  return { ...pooled, gathers, effective: plain ? pooled.seen : effectiveSeen(gathers, confidence) };
}
