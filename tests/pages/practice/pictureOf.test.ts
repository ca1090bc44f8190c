import { expect, it } from "vitest";
import { pictureOf } from "../../../src/pages/practice/pictures/pictureOf.ts";

it("names lesions as they were typed, their doubt first, and whatever else as the table has it", () => {
  const picture = pictureOf("LESIONMIX", [
    ["lesion", "cases", "share"],
    ["interdigital dermatitis", 3, 0.5],
    ["contagious ovine digital dermatitis", 2, 1 / 3],
    ["white line abscess, not sure", 1, 1 / 6],
    ["not recognised", 0, 0],
  ]);
  expect([0, 1, 2, 3].map((index) => picture?.labels?.(index))).toEqual([
    "scald",
    "CODD",
    "not sure: white line abscess",
    "not recognised",
  ]);
  expect(picture?.said).toBe("Most often scald: 50.0 % of the cases.");
});
