import { readFileSync } from "node:fs";
import { beforeAll, describe, expect, test } from "vitest";
import { dayOf } from "../../src/cells/day.ts";
import { carePlan } from "../../src/core/treatment/carePlans/carePlan.ts";
import { lesionName } from "../../src/core/words/lesionName.ts";
import { engineInNode } from "../../src/hosts/headless/engineInNode.ts";
import { openWorkbook } from "../../src/workbook/openWorkbook.ts";
import { type Recalculated, recalculate } from "../../src/workbook/recalculate.ts";
import { year } from "../../src/workbooks/inventedFlock/flockYear.ts";
import { sampleSeed } from "../../src/workbooks/inventedFlock/inventedFlock.ts";
import { onDay } from "../../src/workbooks/onDay.ts";
import { inventedVisit } from "../../src/workbooks/visitSheet/inventedVisit.ts";
import {
  bathRow,
  pageMedicines,
  placedWeighed,
  planLines,
  sheetNames,
} from "../../src/workbooks/visitSheet/placedVisit.ts";
import { visitSheet } from "../../src/workbooks/visitSheet/visitSheet.ts";
import { workedOut } from "../../src/workbooks/workedOut.ts";
import { sheetCells } from "../samples/sheetCells.ts";

const filled = readFileSync("samples/visit-sheet.xlsx");
const empty = readFileSync("samples/visit-sheet-empty.xlsx");
const content = inventedVisit(sampleSeed);

describe("the filled Visit sheet", () => {
  let again: Recalculated;
  const cells = sheetCells(filled);
  beforeAll(async () => {
    again = await recalculate(openWorkbook(filled), engineInNode());
  });

  test("holds what it is worked out to, to the last digit, and no cell ends in an error", () => {
    expect(sheetCells(again.bytes)).toEqual(cells);
    expect(again.summary).toMatchObject({ left: [], errors: [], circular: false });
    expect(openWorkbook(filled).sheets.map(({ name }) => name)).toEqual(Object.values(sheetNames));
  });

  test("gives each lesion that was found its care plan, step for step, one below the other and nothing after", () => {
    expect(content.found.length).toBeGreaterThan(2);
    const lines = content.found.flatMap((found) => {
      const steps = carePlan(lesionName(String(found.lesion)), {
        flockHasFootrot: content.flockHas?.footrot === true,
        flockHasCodd: content.flockHas?.codd === true,
        pusDrained: found.pusLetOut === "yes",
        severe: found.severe === "yes",
      });
      // A plan that reached into the next would hide its end.
      expect(steps.length + 2).toBeLessThanOrEqual(planLines);
      return [
        [undefined, `${found.lesion}${found.severe === "yes" ? ", severe" : ""}`, undefined, undefined],
        ...steps.map(({ step, what, why, caution }) => [String(step), what, why, caution]),
      ];
    });
    const shown = Array.from({ length: lines.length + 1 }, (_, index) =>
      ["A", "B", "C", "D"].map((column) => cells.get(`Care plan!${column}${index + 5}`)),
    );
    expect(lines.some(([, , , caution]) => caution !== undefined)).toBe(true);
    expect(shown).toEqual([...lines, [undefined, undefined, undefined, undefined]]);
  });

  test("shares each dose over its sites without losing any", () => {
    const { medicine } = content;
    if (!medicine) throw new Error("the visit has no medicine");
    content.weighed.forEach((animal, index) => {
      const row = placedWeighed.area.top + 2 + index;
      const dose = Number(cells.get(`Doses!C${row}`));
      expect(dose).toBeCloseTo((Number(animal.kg) * medicine.mgPerKg) / medicine.mgPerMl, 1);
      const sites = ["D", "E", "F", "G"].map((column) => Number(cells.get(`Doses!${column}${row}`) ?? 0));
      expect(sites.reduce((sum, ml) => sum + ml, 0)).toBeCloseTo(dose, 9);
      expect(Math.max(...sites)).toBeLessThanOrEqual(medicine.mostPerSite);
    });
  });

  test("says on the page when each medicine is clear, and when bought sheep may join", () => {
    const [other] = content.otherMedicines;
    const { top } = pageMedicines.rows;
    const line = (row: number) => ["A", "B", "C", "D"].map((column) => cells.get(`Page!${column}${row}`));
    // So many whole days from 31 October 2026: clear on the day after the last of them.
    expect([line(top + 1), line(top + 2), line(top + 3)]).toEqual([
      ["medicine A (invented)", 35, dayOf("2026-12-06"), "into the muscle"],
      [other?.medicine, 15, dayOf("2026-11-16"), other?.route],
      [undefined, undefined, undefined, undefined],
    ]);
    // Four weeks from the last new case among them, as published advice on bought-in sheep has it.
    expect(cells.get("Quarantine!B16")).toBe((content.quarantine?.lastNewCase ?? 0) + 28);
  });

  test("mixes a bath of 10 % zinc sulphate and says so on the page", () => {
    const [litres, powder] = [(300 * 30 * 6) / 1000, ((300 * 30 * 6) / 1000) * 0.1];
    expect(cells.get(`Doses!B${bathRow + 1}`)).toBeCloseTo(litres, 9);
    expect(cells.get(`Doses!B${bathRow + 2}`)).toBeCloseTo(powder, 9);
    const page = [...cells].filter(([address]) => address.startsWith("Page!")).map(([, cell]) => String(cell));
    expect(page).toContain("Footbath of 54 litres: 10 % of zinc sulphate heptahydrate.");
    expect(page).toContain("5.4 kg of it, filled up to 54 litres.");
  });
});

test("the empty Visit sheet has no error, no number of a medicine, and says what is missing in words", async () => {
  const { bytes, summary } = await recalculate(openWorkbook(empty), engineInNode());
  expect(summary.errors).toEqual([]);
  expect(sheetCells(bytes)).toEqual(sheetCells(empty));
  const cells = sheetCells(empty);
  for (let row = 4; row <= 8; row++) expect(cells.get(`Doses!B${row}`)).toBeUndefined();
  expect(cells.get("Care plan!A2")).toBe("No lesions are written down on the sheet Visit.");
});

test("made again, it is the same byte for byte", async () => {
  const { bytes } = await onDay(year.last, () => workedOut(visitSheet(content)));
  expect(Buffer.compare(Buffer.from(bytes), filled)).toBe(0);
});
