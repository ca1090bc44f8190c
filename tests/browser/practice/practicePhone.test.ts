import type { Page } from "playwright-core";
import { describe, expect, it } from "vitest";
import { barriers } from "../barriers.ts";
import { download, said, toSheet } from "./practicePage.ts";
import { servedPractice } from "./servedPractice.ts";

const minutes = 60_000;
const practice = servedPractice();

/** Where the sheet is drawn. */
const drawn = (page: Page): Promise<{ left: number; top: number; width: number; height: number }> =>
  page.evaluate(() => {
    const boxes = [...document.querySelectorAll("canvas")].map((canvas) => canvas.getBoundingClientRect());
    const { left, top, width, height } = boxes.sort((a, b) => b.width * b.height - a.width * a.height)[0] as DOMRect;
    return { left, top, width, height };
  });

type Place = readonly [x: number, y: number];

/** A finger that goes over the screen, or rests where it ends as long as is said before it moves. */
async function swipe(page: Page, from: Place, to: Place, held = 0): Promise<void> {
  const devTools = await page.context().newCDPSession(page);
  const touch = (type: "touchStart" | "touchMove" | "touchEnd", at?: Place): Promise<unknown> =>
    devTools.send("Input.dispatchTouchEvent", { type, touchPoints: at ? [{ x: at[0], y: at[1] }] : [] });
  await touch("touchStart", from);
  await page.waitForTimeout(held);
  for (let step = 1; step <= 10; step += 1)
    await touch("touchMove", [from[0] + ((to[0] - from[0]) * step) / 10, from[1] + ((to[1] - from[1]) * step) / 10]);
  await page.waitForTimeout(120);
  await touch("touchEnd");
  await devTools.detach();
}

const tap = async (page: Page, [x, y]: Place): Promise<string> => {
  await page.touchscreen.tap(x, y);
  await page.waitForTimeout(300);
  return (await page.locator(".status strong").textContent()) ?? "";
};

/** Two taps of a finger, the second a little beside the first, as long after it as is said. */
async function tapTwice(page: Page, [x, y]: Place, slip: Place, between = 120): Promise<void> {
  await page.touchscreen.tap(x, y);
  await page.waitForTimeout(between);
  await page.touchscreen.tap(x + slip[0], y + slip[1]);
}

/** Whether the keys on the screen are asked for, and where the caret of the cell that is typed into stands, if anywhere. */
const typed = (page: Page): Promise<{ keys: boolean; open: boolean }> =>
  page.evaluate(() => {
    const field = document.activeElement as HTMLElement;
    const { left } = field.getBoundingClientRect();
    return { keys: field.isContentEditable && field.inputMode !== "none", open: field.isContentEditable && left > 0 };
  });

/** Words from the keys on the screen, which come whole and by no key. */
async function writeOnScreen(page: Page, words: string): Promise<void> {
  const devTools = await page.context().newCDPSession(page);
  const end = words.length;
  await devTools.send("Input.imeSetComposition", { text: words, selectionStart: end, selectionEnd: end });
  await devTools.send("Input.insertText", { text: words });
  await devTools.detach();
}

describe("on a telephone", () => {
  it.each([
    ["upright", 390, 844],
    ["on its side", 844, 390],
  ] as const)(
    "%s: sheet and tabs are in the window, nothing runs out sideways, a finger scrolls and taps, and no barrier is met",
    async (_, width, height) => {
      const { page, troubles } = await practice.open({ width, height, touch: true, stillness: "reduce" });
      await toSheet(page, "Cases");
      await expect.poll(() => page.evaluate(() => document.documentElement.scrollWidth - innerWidth)).toBe(0);
      const sheet = await drawn(page);
      const tab = await page.getByRole("tab", { name: "Cases", exact: true }).boundingBox();
      expect((tab?.y ?? Number.NaN) + (tab?.height ?? 0)).toBeLessThan(height);
      expect(await barriers(page)).toEqual([]);

      const inCells: Place = [width - 60, sheet.top + sheet.height - 40];
      const before = await tap(page, inCells);
      await swipe(page, inCells, [inCells[0] - 200, inCells[1]]);
      expect(await page.locator(".status strong").textContent()).toBe(before);
      const column = (place: string): string => /([A-Z]+)\d+$/.exec(place)?.[1] ?? "";
      const across = await tap(page, inCells);
      expect(column(across) > column(before), `${across} is to the right of ${before}`).toBe(true);
      await swipe(page, inCells, [inCells[0], inCells[1] - 60]);
      const row = (place: string): number => Number(/\d+$/.exec(place)?.[0]);
      const down = await tap(page, inCells);
      expect(row(down)).toBeGreaterThan(row(across));
      // The heading that names the row stays: some column is frozen, and most of the width is not.
      expect(await tap(page, [60, inCells[1]])).toBe(`Cases A${row(down)}`);
      expect(column(await tap(page, [Math.round(width * 0.45), inCells[1]])) > "C").toBe(true);
      expect(troubles).toEqual([]);
      await page.close();
    },
    4 * minutes,
  );

  it(
    "what is typed goes into the cell that was tapped; held, a finger marks cells; the file keeps its frozen columns",
    async () => {
      const { page, troubles } = await practice.open({ width: 390, height: 844, touch: true, stillness: "reduce" });
      await toSheet(page, "Cases");
      const sheet = await drawn(page);
      const place: Place = [300, sheet.top + 300];
      const tapped = await tap(page, place);
      await swipe(page, place, [place[0], place[1] + 40], 600);
      await expect.poll(() => page.getByLabel("Cell", { exact: true }).inputValue()).toMatch(/^[A-Z]+\d+:[A-Z]+\d+$/);
      await tap(page, place);
      await page.keyboard.type("mine");
      await page.keyboard.press("Enter");
      const { workbook } = await download(page);
      const cases = workbook.sheets.find(({ name }) => name === "Cases");
      expect(cases?.text).toMatch(/<pane [^>]*xSplit="3"/);
      const held = cases?.rows.flatMap(({ cells }) => cells).filter(({ value }) => value === "mine") ?? [];
      expect(held.map(({ row }) => `Cases ${row + 1}`)).toEqual([tapped.replace(/[A-Z]+(\d+)$/, "$1")]);
      await said(
        page,
        tapped.replace(/^Cases ([A-Z]+)(\d+)$/, (_, column, row) => `${column}${Number(row) + 1}`),
      );
      expect(troubles).toEqual([]);
      await page.close();
    },
    4 * minutes,
  );

  it(
    "one tap selects a cell and leaves the screen free; two taps, or the button below the sheet, open it for typing",
    async () => {
      const { page, troubles } = await practice.open({ width: 390, height: 844, touch: true, stillness: "reduce" });
      await page.getByRole("tab", { name: "Cases", exact: true }).tap();
      const sheet = await drawn(page);
      const place: Place = [300, sheet.top + 250];
      await tap(page, place);
      expect(await typed(page)).toEqual({ keys: false, open: false });
      const before = await page.getByLabel("Cell", { exact: true }).inputValue();
      await page.waitForTimeout(600);

      // Far apart, or long after one another, they are two taps at two cells.
      await tapTwice(page, place, [0, 60]);
      await page.waitForTimeout(600);
      await tapTwice(page, place, [0, 0], 700);
      await page.waitForTimeout(300);
      expect(await typed(page)).toEqual({ keys: false, open: false });
      await page.waitForTimeout(600);

      await tapTwice(page, place, [9, 14]);
      await expect.poll(() => typed(page)).toEqual({ keys: true, open: true });
      expect(await page.getByLabel("Cell", { exact: true }).inputValue()).toBe(before);
      await writeOnScreen(page, " limps");
      // The next cell that is tapped can be typed into at once.
      await tap(page, [place[0], place[1] + 60]);
      expect(await typed(page)).toEqual({ keys: true, open: false });
      // What is not saved is told of, and nothing moves away under the finger.
      await page.getByText("not saved yet").waitFor();
      expect(await drawn(page)).toEqual(sheet);
      await tap(page, place);
      await page.waitForTimeout(600);
      await tap(page, place);
      expect(await typed(page)).toEqual({ keys: false, open: false });
      await said(page, before, / ZZ [0-9 ]+ limps/);

      const button = page.getByRole("button", { name: `Type into ${before}` });
      await button.tap();
      await expect.poll(() => typed(page)).toEqual({ keys: true, open: true });
      await writeOnScreen(page, " more");
      await page.keyboard.press("Enter");
      await said(
        page,
        before.replace(/\d+$/, (row) => `${Number(row) + 1}`),
      );
      const { workbook } = await download(page);
      const cases = workbook.sheets.find(({ name }) => name === "Cases");
      const held = cases?.rows.flatMap(({ cells }) => cells).filter(({ value }) => / limps more$/.test(String(value)));
      expect(held?.map(({ row }) => `${row + 1}`)).toEqual([/\d+$/.exec(before)?.[0]]);
      expect(troubles).toEqual([]);
      await page.close();
    },
    4 * minutes,
  );
});
