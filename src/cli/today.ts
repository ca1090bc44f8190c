import { isoText } from "../cells/day.ts";
import { localClock } from "../hosts/localClock.ts";

/** The calendar's day where the command runs, as 2026-10-31. */
export const today = (): string => isoText(localClock());
