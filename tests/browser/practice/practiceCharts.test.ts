import type { Page } from "playwright-core";
import { expect, it } from "vitest";
import { barriers } from "../barriers.ts";
import { toSheet } from "./practicePage.ts";
import { servedPractice } from "./servedPractice.ts";

const minutes = 60_000;
const practice = servedPractice();

it(
  "the charts of the foot book stand on their sheet, say in words what they show, and move with it",
  async () => {
    const { page, troubles } = await practice.open({ stillness: "reduce" });
    expect(await page.getByRole("img", { name: /^Share lame by month\./ }).count()).toBe(0);
    await toSheet(page, "Picture");
    const chart = page.getByRole("img", { name: /^Share lame by month\. share lame: from .* %/ });
    await chart.waitFor();
    expect(await barriers(page)).toEqual([]);
    const top = async (): Promise<number> => (await chart.boundingBox())?.y ?? Number.NaN;
    const before = await top();
    await page.mouse.move(400, 400);
    await page.mouse.wheel(0, 120);
    await expect.poll(top).toBeLessThan(before - 40);
    await page.mouse.wheel(0, 400);
    await page.getByRole("img", { name: /^What made them lame\. .*: from footrot \d/ }).waitFor();
    await toSheet(page, "Cases");
    await expect.poll(() => page.locator("figure.chart").count()).toBe(0);
    expect(troubles).toEqual([]);
    await page.close();
  },
  5 * minutes,
);

/** Where the sheet is drawn. */
const drawn = (page: Page): Promise<{ left: number; top: number; width: number; height: number }> =>
  page.evaluate(() => {
    const boxes = [...document.querySelectorAll("canvas")].map((canvas) => canvas.getBoundingClientRect());
    const { left, top, width, height } = boxes.sort((a, b) => b.width * b.height - a.width * a.height)[0] as DOMRect;
    return { left, top, width, height };
  });

/** Where the pointer gets the shape to draw an edge with: the first such place in a heading, from the corner on. */
async function edgeOf(page: Page, heading: "column" | "row"): Promise<readonly [x: number, y: number]> {
  const { left, top } = await drawn(page);
  for (let along = heading === "column" ? 60 : 26; along < 400; along += 2) {
    const [x, y] = heading === "column" ? [left + along, top + 10] : [left + 20, top + along];
    await page.mouse.move(x, y);
    const shape = await page.evaluate(() =>
      [...document.querySelectorAll("canvas")].map((canvas) => canvas.style.cursor).join(),
    );
    if (/resize/.test(shape)) return [x, y];
  }
  throw new Error(`no edge of a ${heading} to draw at`);
}

it(
  "a chart goes with its cells where a column or row before it is drawn wider, the panel is put away and the window gets smaller",
  async () => {
    const { page, troubles } = await practice.open({ stillness: "reduce" });
    await toSheet(page, "Picture");
    const chart = page.locator("figure.chart").filter({ hasText: "Share lame by month" });
    await chart.waitFor();
    /** Its upper left corner, from that of the sheet, and where it ends. */
    const place = async (): Promise<readonly number[]> => {
      const sheet = await drawn(page);
      const { x, y, width } = (await chart.boundingBox()) ?? { x: Number.NaN, y: Number.NaN, width: Number.NaN };
      return [x - sheet.left, y - sheet.top, x + width - sheet.left].map(Math.round);
    };
    const [left = 0, top = 0, right = 0] = await place();
    const pull = async (heading: "column" | "row", by: number): Promise<void> => {
      const [x, y] = await edgeOf(page, heading);
      const [across, down] = heading === "column" ? [by, 0] : [0, by];
      await page.mouse.down();
      await page.mouse.move(x + across / 2, y + down / 2, { steps: 4 });
      await page.mouse.move(x + across, y + down, { steps: 4 });
      await page.mouse.up();
    };
    await pull("row", 40);
    await expect.poll(async () => Math.abs(((await place())[1] ?? 0) - top - 40)).toBeLessThan(4);
    await pull("column", 60);
    // A chart that begins in the first column gets wider with it.
    await expect.poll(async () => Math.abs(((await place())[2] ?? 0) - right - 60)).toBeLessThan(4);
    const moved = await place();
    expect(moved[0]).toBeGreaterThanOrEqual(left);
    await page.getByRole("button", { name: "Hide panel" }).click();
    await expect.poll(async () => (await drawn(page)).width).toBeGreaterThan(1100);
    await expect.poll(place).toEqual(moved);
    // Narrow, the page itself scrolls.
    await page.setViewportSize({ width: 700, height: 700 });
    await expect.poll(async () => (await drawn(page)).width).toBeLessThan(701);
    await expect.poll(place).toEqual(moved);
    await page.evaluate(() => scrollTo(0, 60));
    await expect.poll(place).toEqual(moved);
    expect(troubles).toEqual([]);
    await page.close();
  },
  5 * minutes,
);
