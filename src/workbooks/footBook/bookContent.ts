import type { Day } from "../../cells/day.ts";
import type { cases } from "../tables/cases.ts";
import type { RecordOf } from "../tables/defineTable.ts";
import type { gathers } from "../tables/gathers.ts";
import type { groups, medicines } from "../tables/settingsTables.ts";

/** What a Flock foot book holds when it is made. */
export interface BookContent {
  readonly farm?: string | undefined;
  /** The day the file says it was made, as 2026-10-31. */
  readonly made: string;
  /** Said on the first sheet of a book whose records are invented. */
  readonly invented: boolean;
  /** The day everything is worked out for; the calendar's, when left out. */
  readonly asOf?: Day | undefined;
  readonly target: number;
  /** The lowest locomotion score called lame; a farm says for itself. */
  readonly lameFrom?: number | undefined;
  readonly breedingSheep?: number | undefined;
  readonly slaughterLambs?: number | undefined;
  readonly groups: readonly RecordOf<typeof groups>[];
  readonly medicines: readonly RecordOf<typeof medicines>[];
  readonly givenBy: readonly string[];
  readonly gathers: readonly RecordOf<typeof gathers>[];
  readonly cases: readonly RecordOf<typeof cases>[];
  /** Settings of another book by the names of their cells; what is not given keeps its usual value. */
  readonly settings?: ReadonlyMap<string, number | undefined>;
  /** The usual treatments, where a book had a list of its own. */
  readonly treatments?: readonly string[];
  readonly saleDate?: Day | undefined;
  readonly saleTags: readonly string[];
  readonly eventDate?: Day | undefined;
}
