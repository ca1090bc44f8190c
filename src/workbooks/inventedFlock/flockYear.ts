import { type Day, dayOf } from "../../cells/day.ts";

/**
 * The invented year. All numbers of the flock are made up to look like a lowland flock that lambs in spring; none is
 * taken from a farm. Common practice, no source.
 */
export const year = {
  first: dayOf("2025-11-01"),
  /** The last day on which something was written down, and the day the sample workbook is worked out for. */
  last: dayOf("2026-10-31"),
  housed: dayOf("2026-01-10"),
  turnedOut: dayOf("2026-04-18"),
  lambs: dayOf("2026-04-10"),
  boughtIn: dayOf("2026-08-18"),
  /** Ahead of `last`: the dates that the sample's lists look forward to. */
  sale: dayOf("2026-11-03"),
  nextHousing: dayOf("2026-11-02"),
} as const;

/** A group of sheep that is gathered together. */
export interface Group {
  readonly name: string;
  readonly head: number;
  readonly from: Day;
  readonly lambs: boolean;
  /** How readily its animals go lame, beside 1 for a young ewe. */
  readonly readiness: number;
  /** The share of its lame animals that is caught, treated and written down one by one. */
  readonly recorded: number;
}

export const groups: readonly Group[] = [
  { name: "Old ewes", head: 140, from: year.first, lambs: false, readiness: 1.3, recorded: 0.56 },
  { name: "Young ewes", head: 150, from: year.first, lambs: false, readiness: 1, recorded: 0.56 },
  { name: "Shearlings", head: 100, from: year.first, lambs: false, readiness: 0.75, recorded: 0.56 },
  { name: "Bought-in shearlings", head: 30, from: year.boughtIn, lambs: false, readiness: 1, recorded: 0.85 },
  { name: "Lambs", head: 640, from: year.lambs, lambs: true, readiness: 0.75, recorded: 0.2 },
];

const headsOf = (isOurs: (group: Group) => boolean): number =>
  groups.filter(isOurs).reduce((sum, { head }) => sum + head, 0);

/** How many ewes there are at the end of the year, and how many lambs there were. */
export const ewes = headsOf(({ lambs }) => !lambs);
export const lambs = headsOf((group) => group.lambs);
