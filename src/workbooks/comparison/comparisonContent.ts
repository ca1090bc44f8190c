import type { Day } from "../../cells/day.ts";
import type { FlockDone } from "../collate/flockDone.ts";

/** What was counted in a flock on one day, its groups together. */
export interface FlockGather {
  readonly day: Day;
  readonly lookedAt: number;
  readonly lame: number;
}

/** One flock over one year, as it is typed or collected from its foot book. Undefined is not known. */
export interface FlockYear {
  readonly flock: string;
  readonly lookedAt: number | undefined;
  readonly lame: number | undefined;
  readonly lookedAtBefore: number | undefined;
  readonly lameBefore: number | undefined;
  /** Of the year and the one before, where more than the totals is known. */
  readonly gathers?: readonly FlockGather[] | undefined;
  readonly cases: number | undefined;
  readonly antibioticMg: number | undefined;
  readonly breedingSheep: number | undefined;
  readonly slaughterLambs: number | undefined;
  /** Where the flock has a target of its own. */
  readonly target: number | undefined;
  readonly note: string | undefined;
}

/** What became of one file. */
export interface BookLine {
  readonly file: string;
  readonly flock: string | undefined;
  readonly used: boolean;
  /** Gathers and cases read. */
  readonly records: number | undefined;
  /** Things that should be mended in them. */
  readonly toMend: number | undefined;
  /** Why it was not used, or what was left out of it. */
  readonly words: string;
}

/** What a flock comparison holds when it is made. */
export interface ComparisonContent {
  /** The day the file says it was made, as 2026-10-31. */
  readonly made: string;
  readonly invented: boolean;
  readonly year: number | undefined;
  readonly target: number;
  readonly flocks: readonly FlockYear[];
  /** What is done in each of them, for flocks that were read from their books. */
  readonly done?: readonly FlockDone[];
  /** The flock that its own page is about. */
  readonly chosen: string | undefined;
  /** The files that the rows came from; none where they are typed. */
  readonly books: readonly BookLine[];
}

/**
 * Whether the flocks were read from books. Then the sheets hold values: in formulas each row would look at all others,
 * which thousands of flocks are too many for. Where rows are typed formulas have to follow what is typed.
 */
export const isCollated = ({ books }: ComparisonContent): boolean => books.length > 0;
