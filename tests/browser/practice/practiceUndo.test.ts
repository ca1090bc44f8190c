import type { Page } from "playwright-core";
import { expect, it } from "vitest";
import { buildWorkbook, rowsOf } from "../../workbook/buildWorkbook.ts";
import { download, goTo, openFile, paste, settled, type } from "./practicePage.ts";
import { servedPractice } from "./servedPractice.ts";

const minutes = 60_000;
const practice = servedPractice();
const cells = { A1: "Lame", B1: "Looked at", A2: 1, B2: 10, A3: 2, B3: 20, A4: 3, B4: 30, C2: "=A2*2" };
const feet =
  '<dataValidations count="1"><dataValidation type="list" sqref="D1:D9"><formula1>"LF,RF,LH,RH"</formula1></dataValidation></dataValidations>';

/** Each cell of the file that holds something, as it is saved. */
async function saved(page: Page): Promise<Readonly<Record<string, string>>> {
  const { workbook } = await download(page);
  const cellsHeld = workbook.sheets.flatMap(({ rows }) => rows.flatMap(({ cells: inRow }) => inRow));
  return Object.fromEntries(
    cellsHeld
      .filter(({ value, formula }) => value !== null || formula)
      .map(({ row, column, value, formula }) => [`${row} ${column}`, JSON.stringify([value, formula?.text])]),
  );
}

const selectDown = async (page: Page, first: string, more: number): Promise<void> => {
  await goTo(page, first);
  for (let row = 0; row < more; row += 1) await page.keyboard.press("Shift+ArrowDown");
};

/** Fills B5 to B7 by the corner of B4. */
async function dragCorner(page: Page): Promise<void> {
  await goTo(page, "B4");
  const sheet = await page.evaluate(() => {
    const boxes = [...document.querySelectorAll("canvas")].map((canvas) => canvas.getBoundingClientRect());
    const largest = boxes.sort((one, other) => other.width * other.height - one.width * one.height)[0];
    return { x: largest?.x ?? 0, y: largest?.y ?? 0 };
  });
  // The lower right corner of B4: below the headings, a row is 20 high and these columns are 68 wide as long as no date is typed.
  const [x, y] = [sheet.x + 46 + 2 * 68, sheet.y + 20 + 4 * 20];
  const isCross = (): boolean =>
    [...document.querySelectorAll("canvas")].some(({ style }) => style.cursor === "crosshair");
  // As the pointer comes over the corner, it tells that the corner can be dragged.
  await expect
    .poll(async () => {
      await page.mouse.move(x - 20, y - 8);
      await page.mouse.move(x - 1, y - 1, { steps: 4 });
      return page.evaluate(isCross);
    })
    .toBe(true);
  await page.mouse.down();
  await page.mouse.move(x - 4, y + 50, { steps: 8 });
  await page.mouse.up();
}

/** What a person does, and how many cells of the file are others afterwards. */
const doings: readonly (readonly [what: string, others: number, doIt: (page: Page) => Promise<unknown>])[] = [
  ["cells filled by dragging the corner", 3, dragCorner],
  ["a typed date", 1, (page) => type(page, "A6", "2026-03-14")],
  ["a typed number that a formula reads", 2, (page) => type(page, "A2", "7")],
  ["a typed formula", 1, (page) => type(page, "E2", "=FOOT.FLOCKPREV(A2,B2)")],
  [
    "cells that are cleared",
    4,
    async (page) => {
      await selectDown(page, "A2", 2);
      await page.keyboard.press("Delete");
    },
  ],
  [
    "a choice picked from the list",
    1,
    async (page) => {
      await goTo(page, "D2");
      await page.keyboard.press("Alt+ArrowDown");
      await page.getByRole("listbox").waitFor();
      await page.keyboard.press("r");
      await page.keyboard.press("Enter");
    },
  ],
  [
    "cells that are cut and pasted, and the formula that reads one of them",
    7,
    async (page) => {
      await selectDown(page, "A2", 2);
      await page.keyboard.press("Control+x");
      await goTo(page, "F3");
      await page.keyboard.press("Control+v");
    },
  ],
  [
    "cells that are copied and pasted",
    3,
    async (page) => {
      await selectDown(page, "A2", 2);
      await page.keyboard.press("Control+c");
      await goTo(page, "F3");
      await page.keyboard.press("Control+v");
    },
  ],
  [
    "what is pasted beyond the last row",
    200,
    async (page) => {
      await goTo(page, "G20");
      await page.keyboard.press("ArrowDown");
      await paste(page, "text/plain", Array.from({ length: 200 }, (_, row) => String(row)).join("\n"));
    },
  ],
];

it(
  "what was done is taken back with one Ctrl+Z, comes again with Ctrl+Y, and counts as not saved",
  async () => {
    const { page, troubles } = await practice.open();
    await page.context().grantPermissions(["clipboard-read", "clipboard-write"]);
    await openFile(page, "mine.xlsx", buildWorkbook({ sheets: [{ name: "Flock", rows: rowsOf(cells), after: feet }] }));
    const before = await saved(page);
    const others = (now: Readonly<Record<string, string>>): number =>
      Object.keys({ ...before, ...now }).filter((place) => before[place] !== now[place]).length;
    const isUnsaved = page.getByText("not saved yet");
    for (const [what, count, doIt] of doings) {
      await isUnsaved.waitFor({ state: "detached" });
      await doIt(page);
      await isUnsaved.waitFor();
      await settled(page);
      const done = await saved(page);
      expect(others(done), what).toBe(count);
      await page.keyboard.press("Control+z");
      await isUnsaved.waitFor();
      expect(await saved(page), what).toEqual(before);
      await page.keyboard.press("Control+y");
      await isUnsaved.waitFor();
      expect(await saved(page), what).toEqual(done);
      await page.keyboard.press("Control+z");
      await isUnsaved.waitFor();
      expect(await saved(page), what).toEqual(before);
    }
    expect(troubles).toEqual([]);
    await page.close();
  },
  8 * minutes,
);

it(
  "a corner that is dragged as the very first thing fills cells",
  async () => {
    const { page } = await practice.open();
    await openFile(page, "mine.xlsx", buildWorkbook({ sheets: [{ name: "Flock", rows: rowsOf(cells) }] }));
    await dragCorner(page);
    await page.getByText("not saved yet").waitFor();
    const filled = Object.values(await saved(page)).filter((cell) => cell === "[30,null]");
    // B4 itself and the three below it.
    expect(filled).toHaveLength(4);
    await page.close();
  },
  2 * minutes,
);

it(
  "thirty typed cells can all be taken back",
  async () => {
    const { page } = await practice.open();
    await openFile(page, "mine.xlsx", buildWorkbook({ sheets: [{ name: "Flock", rows: rowsOf(cells) }] }));
    const before = await saved(page);
    await goTo(page, "H1");
    for (let cell = 1; cell <= 30; cell += 1) {
      await page.keyboard.type(String(cell));
      await page.keyboard.press("Enter");
    }
    expect(Object.keys(await saved(page)).length - Object.keys(before).length).toBe(30);
    for (let step = 0; step < 30; step += 1) await page.keyboard.press("Control+z");
    expect(await saved(page)).toEqual(before);
    await page.close();
  },
  4 * minutes,
);
