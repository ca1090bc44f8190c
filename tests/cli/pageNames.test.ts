import fc from "fast-check";
import { expect, test } from "vitest";
import { pageNames } from "../../src/cli/pageNames.ts";

test("no two pages share a file, and no sign is left that a system refuses", () => {
  expect(pageNames(["Hill", "hill", "Low/Moor", "a:b\n?"])).toEqual([
    "Flock page Hill.xlsx",
    "Flock page hill (2).xlsx",
    "Flock page Low-Moor.xlsx",
    "Flock page a-b--.xlsx",
  ]);
  fc.assert(
    fc.property(fc.array(fc.string({ unit: "grapheme", maxLength: 80 })), (flocks) => {
      const names = pageNames(flocks);
      expect(new Set(names.map((name) => name.toLowerCase())).size).toBe(flocks.length);
      for (const name of names) expect(name).toMatch(/^Flock page [^<>:"/\\|?*\n]*\.xlsx$/);
    }),
  );
});
