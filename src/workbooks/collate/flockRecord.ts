import type { Day } from "../../cells/day.ts";
import type { CareYear } from "./careByYear.ts";

/** What one year of a flock comes to. */
export interface YearRecord {
  /** Rows of Gathers. */
  gathers: number;
  /** What was counted on each day, its groups together. */
  readonly days?: Map<Day, { lookedAt: number; lame: number }>;
  lookedAt: number;
  lame: number;
  cases: number;
  /** mg of active antibiotic; undefined once a course is found that cannot be worked out. */
  antibioticMg: number | undefined;
  /** Courses of which the book does not say how much was given, or how strong it is. */
  coursesWithoutMg: number;
}

/** Whether no case and no course stands in a year: nobody can say whether there was none, or none was written down. */
export const isUnwritten = (year: YearRecord | undefined): boolean =>
  year === undefined || (year.cases === 0 && year.antibioticMg === 0 && year.coursesWithoutMg === 0);

/** What is kept of one foot book: a few numbers, whatever its size. */
export interface FlockRecord {
  /** As written in the book's settings; undefined where nothing is. */
  readonly flock: string | undefined;
  readonly target: number | undefined;
  readonly breedingSheep: number | undefined;
  readonly slaughterLambs: number | undefined;
  readonly years: ReadonlyMap<number, YearRecord>;
  /** The day up to which the book is complete; undefined where it does not say. */
  readonly asOf: number | undefined;
  /** What was done about the cases, by the year in which they began. */
  readonly care: ReadonlyMap<number, CareYear>;
  /** Rows of Cases without a tag or a day that can be read, which are in no case. */
  readonly inNoCase: number;
  /** Courses of antibiotic without a day that can be read: they may be of any year. */
  readonly coursesWithoutDay: number;
  readonly records: number;
  /** Findings of the check, and rows left out. */
  readonly toMend: number;
  /** What was left out, in words. */
  readonly leftOut: readonly string[];
  /** The day of the first record, of a gather or of a case; undefined where there is none. */
  readonly earliest?: number | undefined;
  /** The latest day of a gather. */
  readonly latest: number;
}
