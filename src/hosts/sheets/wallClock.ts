import type { Moment } from "../../cells/day.ts";
import { msPerDay } from "../../cells/msPerDay.ts";

/** The serial of 1 January 1970, from which a Date counts (ECMA-376 Part 1 §18.17.4.1, 1900 system). */
const epoch = 25_569;

/** Turns the Date objects of Google Sheets into serials and back, by the clock on the wall in one time zone. */
export interface WallClock {
  readonly serialOf: (date: Date) => Moment;
  readonly dateOf: (serial: Moment) => Date;
}

/**
 * Sheets hands over a date cell as the instant at which a clock in the spreadsheet's time zone shows it. The zone of
 * the script may be another, so that the Date's own getters may give the day before or after.
 *
 * @param zone - the spreadsheet's time zone, such as "Europe/Helsinki"
 * @example
 * wallClock("Europe/Helsinki").serialOf(new Date("2026-03-13T22:00:00Z")) // → 46095 (14 March 2026)
 */
export function wallClock(zone: string): WallClock {
  const clock = new Intl.DateTimeFormat("en-US", {
    timeZone: zone,
    calendar: "gregory",
    numberingSystem: "latn",
    hourCycle: "h23",
    year: "numeric",
    month: "numeric",
    day: "numeric",
    hour: "numeric",
    minute: "numeric",
    second: "numeric",
  });

  /** What the wall shows at an instant, both in milliseconds; the wall as if it hung in Greenwich. */
  const shown = (instant: number): number => {
    const parts: Record<string, number> = {};
    for (const { type, value } of clock.formatToParts(instant)) parts[type] = Number(value);
    const { year = 0, month = 1, day = 1, hour = 0, minute = 0, second = 0 } = parts;
    return Date.UTC(year, month - 1, day, hour, minute, second) + modulo(instant, 1000);
  };
  const ahead = (instant: number): number => shown(instant) - instant;

  return {
    serialOf(date) {
      const wall = shown(date.getTime());
      return Math.floor(wall / msPerDay) + epoch + modulo(wall, msPerDay) / msPerDay;
    },
    dateOf(serial) {
      const wall = Math.round((serial - epoch) * msPerDay);
      const first = wall - ahead(wall);
      const second = wall - ahead(first);
      const match = [second, first].find((instant) => shown(instant) === wall);
      // Where clocks go forward at midnight, midnight is never shown: the later instant is still on the same day.
      return new Date(match ?? Math.max(first, second));
    },
  };
}

const modulo = (value: number, divisor: number): number => ((value % divisor) + divisor) % divisor;
