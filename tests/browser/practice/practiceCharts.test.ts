import { expect, it } from "vitest";
import { barriers } from "../barriers.ts";
import { goTo, toSheet } from "./practicePage.ts";
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

it(
  "a chart follows at once when a column before it is made wider",
  async () => {
    const { page } = await practice.open({ stillness: "reduce" });
    await toSheet(page, "Picture");
    await goTo(page, "A1");
    const chart = page.getByRole("img", { name: /^New cases by month\./ });
    const left = async (): Promise<number> => (await chart.boundingBox())?.x ?? Number.NaN;
    await chart.waitFor();
    const before = await left();
    const grid = await page.locator(".grid canvas").first().boundingBox();
    // The edge between the headings of columns A and B: as wide as the file has A, behind the numbers of the rows.
    const [x, y] = [(grid?.x ?? 0) + 135, (grid?.y ?? 0) + 10];
    await page.mouse.move(x - 4, y);
    await page.mouse.move(x, y, { steps: 4 });
    await page.mouse.down();
    await page.mouse.move(x + 40, y, { steps: 8 });
    await page.mouse.up();
    await expect.poll(left).toBeGreaterThan(before + 30);
    await page.close();
  },
  5 * minutes,
);
