import { expect, it } from "vitest";
import { showDay } from "../../../src/cells/day.ts";
import { placeOf } from "../../../src/pages/taskPane/place.ts";
import { today } from "../../../src/pages/taskPane/today.ts";

it.each([
  ["", { view: "find", name: undefined }],
  ["#find", { view: "find", name: undefined }],
  ["#cautions", { view: "cautions", name: undefined }],
  ["#CAUTIONS", { view: "find", name: "CAUTIONS" }],
])("%s shows %j", (hash, place) => {
  expect(placeOf(hash)).toEqual(place);
});

it("today is the day on the wall, up to midnight", () => {
  expect(showDay(today(new Date(2026, 2, 14, 23, 59)))).toBe("14 Mar 2026");
  expect(showDay(today(new Date(2026, 2, 15, 0, 0)))).toBe("15 Mar 2026");
});
