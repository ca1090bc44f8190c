import { expect, it } from "vitest";
import { dayOf, showMoment } from "../../src/cells/day.ts";
import { localClock } from "../../src/hosts/localClock.ts";

it("the local clock is the one on the wall, up to midnight and from it on", () => {
  expect(showMoment(localClock(new Date(2026, 2, 14, 23, 59)))).toBe("14 Mar 2026 23:59");
  expect(localClock(new Date(2026, 2, 14, 23, 59, 59, 999))).toBeLessThan(dayOf("2026-03-15"));
  expect(localClock(new Date(2026, 2, 15))).toBe(dayOf("2026-03-15"));
  expect(localClock(new Date(2026, 2, 14, 18))).toBe(dayOf("2026-03-14") + 0.75);
  expect(localClock(new Date(2028, 1, 29, 6))).toBe(dayOf("2028-02-29") + 0.25);
});
