import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import type { AxeResults } from "axe-core";
import type { Browser } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import type { Serving } from "../../../src/build/practice/serveFolder.ts";
import type { Cell } from "../../../src/cells/cell.ts";
import { engineInNode } from "../../../src/hosts/headless/engineInNode.ts";
import { openWorkbook } from "../../../src/workbook/openWorkbook.ts";
import { recalculate } from "../../../src/workbook/recalculate.ts";
import { cellValue, type Workbook } from "../../../src/workbook/workbook.ts";
import { launch } from "../launch.ts";
import { goTo, openPractice, said, servePractice, toSheet, type } from "./practicePage.ts";

const axe = readFileSync(createRequire(import.meta.url).resolve("axe-core/axe.min.js"), "utf8");
const minutes = 60_000;

let serving: Serving;
let browser: Browser;
beforeAll(async () => {
  serving = await servePractice();
  browser = await launch();
}, 5 * minutes);
afterAll(async () => {
  await browser?.close();
  serving?.close();
});

function sheetNamed(workbook: Workbook, wanted: string) {
  const sheet = workbook.sheets.find(({ name }) => name === wanted);
  if (!sheet) throw new Error(`there is no sheet ${wanted}`);
  return sheet;
}

const valuesOf = (workbook: Workbook): Map<string, Cell> =>
  new Map(
    workbook.sheets.flatMap(({ name, rows }) =>
      rows.flatMap(({ cells }) =>
        cells
          .filter(({ value }) => value !== null)
          .map(({ row, column, value }) => [`${name} ${row} ${column}`, value] as const),
      ),
    ),
  );

// The browser and Node.js may differ in the last digit of a power or a logarithm.
const lastDigits = 1e-12;

const isSame = (one: Cell | undefined, other: Cell | undefined): boolean =>
  typeof one === "number" && typeof other === "number"
    ? Math.abs(one - other) <= lastDigits * Math.max(Math.abs(one), Math.abs(other))
    : JSON.stringify(one) === JSON.stringify(other);

const differing = (one: ReadonlyMap<string, Cell>, other: ReadonlyMap<string, Cell>): readonly string[] =>
  [...new Set([...one.keys(), ...other.keys()])].filter((key) => !isSame(one.get(key), other.get(key)));

describe("the practice sheet", () => {
  it(
    "works out what is typed, spills, and says why it refuses; it asks nobody but its own server",
    async () => {
      const { page, troubles, asked } = await openPractice(browser, serving.address);
      await type(page, "E4", "=FOOT.FLOCKPREV(4,20)");
      expect(await said(page, "E4", /%/)).toContain("Start E4 20.0%");
      await type(page, "E6", "=FOOT.FLOCKPREV(24,20)");
      expect(await said(page, "E6", /#VALUE!/)).toContain(
        "lame: 24 is more than the 20 seen; enter the lame sheep among those seen",
      );
      await type(page, "E8", "=FOOT.PREVRANGE(4,20)");
      expect(await said(page, "E8", /%/)).toContain("Start E8 8.1%");
      expect(await said(page, "F8", /%/)).toContain("Start F8 41.6%");
      expect(troubles).toEqual([]);
      expect(asked.filter((url) => !url.startsWith(serving.address) && !url.startsWith("blob:"))).toEqual([]);
      await page.close();
    },
    4 * minutes,
  );

  it(
    "a case changed in an opened workbook changes the sheet Today, and the file it gives holds what the command line works out",
    async () => {
      const { page, troubles } = await openPractice(browser, serving.address);
      const book = openWorkbook(readFileSync("samples/flock-foot-book.xlsx"));
      await page.locator("input[type=file]").setInputFiles("samples/flock-foot-book.xlsx");
      await page.getByText("flock-foot-book.xlsx is open.").waitFor();
      const cases = sheetNamed(book, "Cases");
      const asOf = Number(cellValue(sheetNamed(book, "Settings"), 4, 1));
      const today = sheetNamed(book, "Today");
      const before = String(cellValue(today, 3, 0));
      // The last case gets a withdrawal period that reaches beyond the day the book is worked out for.
      const last = cases.rows
        .filter(({ cells }) => cells.some(({ column, value }) => column === 1 && typeof value === "number"))
        .at(-1);
      if (!last) throw new Error("there is no case");
      expect(Number(cellValue(cases, last.row, 1))).toBeLessThanOrEqual(asOf);
      await toSheet(page, "Cases");
      await page.locator(".status", { hasText: "Cases" }).waitFor();
      await type(page, `K${last.row + 1}`, "300");
      await said(page, `K${last.row + 1}`, /300/);
      await page.locator(".status", { hasNotText: "Working out" }).waitFor({ timeout: minutes });
      const saved = page.waitForEvent("download", { timeout: 2 * minutes });
      await page.getByRole("button", { name: "Download" }).click();
      const file = openWorkbook(readFileSync((await (await saved).path()) ?? ""));
      const again = openWorkbook((await recalculate(file, engineInNode())).bytes);
      expect(differing(valuesOf(file), valuesOf(again))).toEqual([]);
      expect(cellValue(sheetNamed(file, "Cases"), last.row, 10)).toBe(300);
      const changed = [...valuesOf(file)].filter(
        ([key, value]) => key.startsWith("Today ") && !isSame(valuesOf(book).get(key), value),
      );
      expect(changed.length).toBeGreaterThan(0);
      // What the page shows is what the file holds.
      await toSheet(page, "Today");
      await page.locator(".status", { hasText: "Today" }).waitFor();
      const [key = "", value] = changed.find(([, content]) => typeof content === "string" && content !== "") ?? [];
      const [row, column] = key.split(" ").slice(-2).map(Number);
      const address = `${String.fromCharCode(65 + (column ?? 0))}${(row ?? 0) + 1}`;
      await goTo(page, address);
      await expect.poll(() => page.locator(".status").textContent(), { timeout: minutes }).toContain(String(value));
      expect(before).not.toBe("");
      expect(troubles).toEqual([]);
      await page.close();
    },
    8 * minutes,
  );

  it.each(["light", "dark"] as const)(
    "%s: nothing serious or critical for those who cannot see or point",
    async (scheme) => {
      const { page } = await openPractice(browser, serving.address, scheme);
      for (const view of ["Functions", "Picture"]) {
        await page.getByRole("button", { name: view, exact: true }).click();
        await page.evaluate(`${axe};0`);
        const { violations } = (await page.evaluate("axe.run({ resultTypes: ['violations'] })")) as AxeResults;
        const bad = violations.filter(({ impact }) => impact === "serious" || impact === "critical");
        expect(bad.map(({ id, nodes }) => `${id}: ${nodes.map(({ html }) => html).join(" ")}`)).toEqual([]);
      }
      await page.close();
    },
    3 * minutes,
  );

  it(
    "refuses a file that is no workbook, in words, and keeps the one that is open",
    async () => {
      const { page } = await openPractice(browser, serving.address);
      await page
        .locator("input[type=file]")
        .setInputFiles({ name: "notes.xlsx", mimeType: "text/plain", buffer: Buffer.from("no workbook") });
      await page.getByText("notes.xlsx was not opened. This is not an .xlsx workbook.").waitFor();
      await type(page, "E4", "=FOOT.FLOCKPREV(1,20)");
      expect(await said(page, "E4", /%/)).toContain("5.0%");
      await page.close();
    },
    3 * minutes,
  );
});
