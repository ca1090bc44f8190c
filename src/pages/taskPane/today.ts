import { type Day, dayOf } from "../../cells/day.ts";

/** The day where the person is. */
export function today(now: Date = new Date()): Day {
  const two = (part: number): string => String(part).padStart(2, "0");
  return dayOf(`${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`);
}
