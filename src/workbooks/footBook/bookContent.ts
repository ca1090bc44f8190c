import type { Cell } from "../../cells/cell.ts";
import type { Day } from "../../cells/day.ts";

/** A row of a table as it is typed. */
export type TypedRow = readonly Cell[];

/** What a Flock foot book holds when it is made. */
export interface BookContent {
  readonly farm: string | undefined;
  /** The day the file says it was made, as 2026-10-31. */
  readonly made: string;
  /** Said on the first sheet of a book whose records are invented. */
  readonly invented: boolean;
  /** The day everything is worked out for; the calendar's, when left out. */
  readonly asOf: Day | undefined;
  readonly target: number;
  /** The lowest locomotion score called lame; a farm says for itself. */
  readonly lameFrom: number | undefined;
  readonly breedingSheep: number | undefined;
  readonly slaughterLambs: number | undefined;
  readonly groups: readonly TypedRow[];
  readonly medicines: readonly TypedRow[];
  readonly givenBy: readonly string[];
  readonly gathers: readonly TypedRow[];
  readonly cases: readonly TypedRow[];
  readonly saleDate: Day | undefined;
  readonly saleTags: readonly string[];
  readonly eventDate: Day | undefined;
}
