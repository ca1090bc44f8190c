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
