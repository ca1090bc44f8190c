import { type Day, isoText } from "../cells/day.ts";

/**
 * Does work while the clock stands still at noon of one day, so that a workbook with TODAY() in it comes out the same
 * whenever it is made.
 */
export async function onDay<T>(day: Day, work: () => Promise<T>): Promise<T> {
  const Running = globalThis.Date;
  const noon = Running.parse(`${isoText(day)}T12:00:00`);
  globalThis.Date = class extends Running {
    constructor(...given: readonly unknown[]) {
      // The clock's own constructor takes many kinds of arguments; only the call without any reads the clock.
      super(...((given.length === 0 ? [noon] : given) as [number]));
    }
    // A date made before the clock stood still is one too: libraries ask, and take another for a date of local time.
    static override [Symbol.hasInstance](value: unknown): boolean {
      return value instanceof Running;
    }
    static override now(): number {
      return noon;
    }
  } as DateConstructor;
  try {
    return await work();
  } finally {
    globalThis.Date = Running;
  }
}
