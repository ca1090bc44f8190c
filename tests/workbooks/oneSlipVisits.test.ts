import { beforeAll, describe, expect, test } from "vitest";
import type { Cell } from "../../src/cells/cell.ts";
import { sampleSeed } from "../../src/workbooks/inventedFlock/inventedFlock.ts";
import { inventedVisit } from "../../src/workbooks/visitSheet/inventedVisit.ts";
import { pageFound, pageMedicines, placedGroups, placedWeighed } from "../../src/workbooks/visitSheet/placedVisit.ts";
import type { VisitContent } from "../../src/workbooks/visitSheet/visitContent.ts";
import { visitSheet } from "../../src/workbooks/visitSheet/visitSheet.ts";
import { workedOut } from "../../src/workbooks/workedOut.ts";
import { sheetCells } from "../samples/sheetCells.ts";

const visit = inventedVisit(sampleSeed);
/** In each list the slip is made in the second line; those around it must keep their answers. */
const slipped = 1;

type Listed = "groups" | "found" | "weighed" | "otherMedicines";
const inLine = <K extends Listed>(list: K, change: Partial<VisitContent[K][number]>): VisitContent => ({
  ...visit,
  [list]: visit[list].map((line, index) =>
    index === Math.min(slipped, visit[list].length - 1) ? { ...line, ...change } : line,
  ),
});

type Cells = ReadonlyMap<string, Cell>;
const rowOf = (cells: Cells, sheet: string, columns: string, row: number): readonly (Cell | undefined)[] =>
  [...columns].map((column) => cells.get(`${sheet}!${column}${row}`));

/** What each sheet says of each line that was typed, by where it stands. */
function answersOf(cells: Cells): ReadonlyMap<string, readonly (Cell | undefined)[]> {
  const answers = new Map<string, readonly (Cell | undefined)[]>();
  visit.groups.forEach((_, index) => {
    answers.set(`groups ${index}`, rowOf(cells, "Visit", "EFGHIJ", placedGroups.rows.top + 1 + index));
  });
  visit.weighed.forEach((_, index) => {
    answers.set(`weighed ${index}`, rowOf(cells, "Doses", "CDEFG", placedWeighed.rows.top + 1 + index));
  });
  visit.found.forEach((_, index) => {
    answers.set(`found ${index}`, rowOf(cells, "Page", "AC", pageFound.rows.top + 1 + index));
  });
  return answers;
}

/** The lines of the care plan, by the heading that they stand under. */
function plansOf(cells: Cells): ReadonlyMap<string, readonly string[]> {
  const plans = new Map<string, string[]>();
  let current: string[] = [];
  for (let row = 5; cells.has(`Care plan!B${row}`); row++) {
    const what = String(cells.get(`Care plan!B${row}`));
    if (cells.get(`Care plan!A${row}`) === undefined) {
      current = [String(cells.get(`Care plan!C${row}`) ?? "")];
      plans.set(what, current);
    } else current.push(what);
  }
  return plans;
}

const slips: readonly (readonly [string, Listed | undefined, VisitContent])[] = [
  ["a lesion nobody knows", "found", inLine("found", { lesion: "xyzzy" })],
  ["a lesion that may be two", "found", inLine("found", { lesion: "foot abscess" })],
  ["severe in other words than yes and no", "found", inLine("found", { severe: "quite" })],
  ["a weight in words", "weighed", inLine("weighed", { kg: "eighty" })],
  ["a weight with its unit", "weighed", inLine("weighed", { kg: "66 kg" })],
  ["a weight no sheep has", "weighed", inLine("weighed", { kg: 660 })],
  ["a lamb too light for the syringe's marks", "weighed", inLine("weighed", { kg: 1.3 })],
  ["a weight left out", "weighed", inLine("weighed", { kg: null })],
  ["the number looked at in words", "groups", inLine("groups", { lookedAt: "many" })],
  ["more lame than looked at", "groups", inLine("groups", { lame: 400 })],
  ["withdrawal days with their unit", "otherMedicines", inLine("otherMedicines", { withdrawalDays: "15 d" })],
  ["no withdrawal days", "otherMedicines", inLine("otherMedicines", { withdrawalDays: null })],
  ["the day of the visit as text that is two days", undefined, { ...visit, day: "03/04/2026" as never }],
];

describe("a visit with one slip", () => {
  let sound: Cells;
  const cellsOf = async (content: VisitContent) => sheetCells((await workedOut(visitSheet(content))).bytes);
  beforeAll(async () => {
    sound = await cellsOf(visit);
  }, 60_000);

  test.each(slips)(
    "%s: all others have their answers, and no medicine is clear that may not be",
    async (_, list, content) => {
      const cells = await cellsOf(content);
      const now = answersOf(cells);
      for (const [line, answers] of answersOf(sound))
        if (line !== `${list} ${slipped}`) expect(now.get(line), line).toEqual(answers);
      const plans = plansOf(cells);
      expect(plans.size).toBe(visit.found.length);
      const [was, is] = [[...plansOf(sound)], [...plans]];
      was.forEach((plan, index) => {
        if (list !== "found" || index !== slipped) expect(is[index]).toEqual(plan);
        else {
          expect(is[index]?.[1]).toEqual([expect.stringMatching(/^No plan for it: .* vet/)]);
          expect(now.get(`found ${slipped}`)?.[1]).toMatch(/^No plan for it: .* vet/);
        }
      });
      if (list === "weighed" && content.weighed[slipped]?.kg !== null) {
        expect(now.get(`weighed ${slipped}`)?.[0]).toMatch(/\w/);
        expect(rowOf(cells, "Doses", "A", placedWeighed.area.top - 1)[0]).toMatch(/no dose/);
      }
      const clear = rowOf(cells, "Page", "CC", pageMedicines.rows.top + 1).concat(
        rowOf(cells, "Page", "C", pageMedicines.rows.top + 2),
      );
      if (list === "otherMedicines") expect(clear[2]).toMatch(/^HOLD/);
      if (list === undefined) for (const said of clear) expect(said).toMatch(/^HOLD/);
    },
    60_000,
  );
});
