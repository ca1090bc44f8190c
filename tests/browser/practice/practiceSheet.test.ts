import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import type { AxeResults } from "axe-core";
import type { Browser } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import type { Serving } from "../../../src/build/practice/serveFolder.ts";
import { launch } from "../launch.ts";
import { openPractice, servePractice } from "./practicePage.ts";

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

describe("the practice sheet", () => {
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
      await page.close();
    },
    3 * minutes,
  );
});
