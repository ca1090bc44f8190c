import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import type { AxeResults } from "axe-core";
import type { Page } from "playwright-core";

const axe = readFileSync(createRequire(import.meta.url).resolve("axe-core/axe.min.js"), "utf8");

/** What is serious or critical for those who cannot see or point. */
export async function barriers(page: Page): Promise<readonly string[]> {
  await page.evaluate(`${axe};0`);
  const { violations } = (await page.evaluate("axe.run({ resultTypes: ['violations'] })")) as AxeResults;
  return violations
    .filter(({ impact }) => impact === "serious" || impact === "critical")
    .map(({ id, nodes }) => `${id}: ${nodes.map(({ html }) => html).join(" ")}`);
}
