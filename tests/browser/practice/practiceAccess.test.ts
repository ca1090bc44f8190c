import type { Page } from "playwright-core";
import { describe, expect, it } from "vitest";
import { cases } from "../../../src/workbooks/tables/cases.ts";
import { columnOf } from "../../workbooks/columnOf.ts";
import { barriers } from "../barriers.ts";
import { goTo, said, settled, toSheet } from "./practicePage.ts";
import { servedPractice } from "./servedPractice.ts";

const foot = `${columnOf(cases, "foot")}9`;

const minutes = 60_000;

const practice = servedPractice();

const isInSheet = (page: Page): Promise<boolean> =>
  page.evaluate(() => document.querySelector(".grid")?.contains(document.activeElement) ?? false);

const focused = (page: Page): Promise<string> =>
  page.evaluate(
    () => (document.activeElement?.getAttribute("aria-label") ?? document.activeElement?.textContent) || "",
  );

describe("the practice sheet for everybody", () => {
  it.each(["light", "dark"] as const)(
    "%s: nothing serious or critical in any view",
    async (look) => {
      // A colour half-way between two has too little contrast.
      const { page } = await practice.open({ look, stillness: "reduce" });
      expect(await barriers(page)).toEqual([]);
      await page.getByRole("link", { name: /^FLOCKPREV/ }).click();
      await page.getByRole("heading", { name: "FOOT.FLOCKPREV" }).waitFor();
      expect(await barriers(page)).toEqual([]);
      await page.getByRole("button", { name: "Picture", exact: true }).click();
      await page.locator(".picture canvas").first().waitFor();
      expect(await barriers(page)).toEqual([]);
      await page.getByRole("button", { name: "Workbooks", exact: true }).click();
      await toSheet(page, "Cases");
      await goTo(page, foot);
      await page.keyboard.press("Alt+ArrowDown");
      await page.getByRole("listbox", { name: `Choices for Cases ${foot}` }).waitFor();
      expect(await barriers(page)).toEqual([]);
      await page.keyboard.press("Escape");
      await page.keyboard.type("=FOOT.FL");
      await page.getByRole("listbox", { name: "Functions that begin so" }).waitFor();
      expect(await barriers(page)).toEqual([]);
      await page.close();
    },
    5 * minutes,
  );

  it(
    "a function that is chosen takes the reader to its heading, and the way back to that of the list",
    async () => {
      const { page } = await practice.open();
      const isHeading = () => page.evaluate(() => document.activeElement?.tagName === "H2");
      await page.getByRole("link", { name: /^FLOCKPREV/ }).focus();
      expect(await isHeading()).toBe(false);
      await page.keyboard.press("Enter");
      await page.getByRole("heading", { name: "FOOT.FLOCKPREV" }).waitFor();
      await expect.poll(isHeading).toBe(true);
      await expect.poll(() => focused(page)).toBe("FOOT.FLOCKPREV");
      await page.getByRole("link", { name: "All functions" }).click();
      await expect.poll(() => focused(page)).toBe("Find a function");
      await page.close();
    },
    5 * minutes,
  );

  it(
    "F6 goes round through sheet, tabs, panel and header, as the page says; Tab in the sheet goes from cell to cell; Ctrl+Page Down changes sheets",
    async () => {
      const { page } = await practice.open();
      await page.getByText("F6 leads out of the sheet and round").waitFor();
      await expect.poll(() => isInSheet(page)).toBe(true);
      await page.keyboard.press("Tab");
      await said(page, "B1");
      await expect.poll(() => isInSheet(page)).toBe(true);
      await page.keyboard.press("F6");
      await expect.poll(() => focused(page)).toBe("Start");
      await page.keyboard.press("F6");
      await expect.poll(() => focused(page)).toBe("Functions");
      expect(await page.evaluate(() => document.activeElement?.matches(":focus-visible"))).toBe(true);
      await page.keyboard.press("Tab");
      await expect.poll(() => focused(page)).toBe("Explain");
      await page.keyboard.press("F6");
      await expect.poll(() => focused(page)).toBe("Open a workbook");
      await page.keyboard.press("Shift+F6");
      await expect.poll(() => focused(page)).toBe("Functions");
      await page.keyboard.press("F6");
      await page.keyboard.press("F6");
      await expect.poll(() => isInSheet(page)).toBe(true);
      await page.keyboard.press("ArrowDown");
      await said(page, "B2");
      await page.keyboard.press("Home");
      await said(page, "A2");
      await page.keyboard.press("Control+Home");
      await said(page, "A1");
      await page.keyboard.press("ArrowRight");
      await page.keyboard.press("ArrowDown");
      await said(page, "B2");
      // Half-way through a formula it is the same.
      await page.keyboard.type("=1+1");
      await page.keyboard.press("Shift+F6");
      await expect.poll(() => isInSheet(page)).toBe(false);
      await page.keyboard.press("Control+PageDown");
      await said(page, "A1", /^Settings/);
      await expect.poll(() => isInSheet(page)).toBe(true);
      await page.keyboard.press("Control+PageUp");
      await said(page, "B2", /^Start/);
      await page.close();
    },
    5 * minutes,
  );

  it(
    "Page Down and Page Up go on by what is in the window, Ctrl+End to the last cell; every stop of Tab can be seen",
    async () => {
      const { page } = await practice.open({ stillness: "reduce" });
      await toSheet(page, "Cases");
      await goTo(page, "C9");
      const row = async (): Promise<number> => Number(/C(\d+)/.exec(await said(page, "C\\d+"))?.[1]);
      await page.keyboard.press("PageDown");
      await expect.poll(row).toBeGreaterThan(20);
      const further = (await row()) - 9;
      await page.keyboard.press("PageDown");
      // A row that is cut off counts or not.
      await expect.poll(row).toBeGreaterThan(9 + 2 * further - 3);
      for (let step = 0; step < 4; step += 1) await page.keyboard.press("PageUp");
      await said(page, "C1");
      await page.keyboard.press("Control+End");
      await said(page, "[S-Z]3\\d\\d");
      // What is typed into is one of them: Page Down leaves it alone.
      await page.keyboard.type("x");
      await page.keyboard.press("PageDown");
      await page.keyboard.press("Escape");
      await said(page, "[S-Z]3\\d\\d");

      await page.getByLabel("Cell", { exact: true }).focus();
      await page.keyboard.press("Tab");
      await expect.poll(() => isInSheet(page)).toBe(true);
      expect(await page.evaluate(() => (document.activeElement as HTMLElement).isContentEditable)).toBe(true);
      await page.close();
    },
    5 * minutes,
  );

  it(
    "whoever goes to the sheet to select cells for a form comes back to its field; a question that is turned down leaves the keys where they were",
    async () => {
      const { page } = await practice.open();
      page.on("filechooser", (chooser) => void chooser.setFiles("samples/visit-sheet.xlsx"));
      await page.getByRole("link", { name: /^FLOCKPREV/ }).click();
      await page.getByLabel("seen", { exact: true }).focus();
      await page.keyboard.press("Shift+F6");
      await page.keyboard.press("Shift+F6");
      await expect.poll(() => isInSheet(page)).toBe(true);
      await page.keyboard.press("ArrowDown");
      await page.keyboard.press("Shift+ArrowDown");
      await page.keyboard.press("F6");
      await page.keyboard.press("F6");
      await page.keyboard.press("Tab");
      await page.keyboard.press("Enter");
      await expect.poll(() => page.getByLabel("seen", { exact: true }).inputValue()).toBe("'Start'!A2:A3");
      // Where the form is gone, it is the choice of views again.
      await page.getByRole("link", { name: "All functions" }).click();
      await expect.poll(() => focused(page)).toBe("Find a function");
      await page.keyboard.press("F6");
      await page.keyboard.press("Shift+F6");
      await expect.poll(() => focused(page)).toBe("Functions");

      await goTo(page, "E6");
      await page.keyboard.type("mine");
      await page.keyboard.press("Enter");
      await page.getByText("not saved yet").waitFor();
      for (const key of ["F6", "F6", "F6"]) await page.keyboard.press(key);
      await expect.poll(() => focused(page)).toBe("Open a workbook");
      await page.keyboard.press("Enter");
      await page.getByRole("button", { name: "Go back" }).waitFor();
      await page.keyboard.press("Escape");
      await expect.poll(() => focused(page)).toBe("Open a workbook");
      await page.close();
    },
    5 * minutes,
  );

  it(
    "the line above the sheet has no bar that stays there for those who asked that nothing moves; what is said above leaves the cell in sight",
    async () => {
      const { page } = await practice.open({ stillness: "reduce" });
      // Whoever clicks on a tab types into its sheet.
      await toSheet(page, "Cases");
      await expect.poll(() => isInSheet(page)).toBe(true);
      await page.keyboard.press("Control+ArrowDown");
      for (let step = 0; step < 7; step += 1) await page.keyboard.press(step === 0 ? "ArrowDown" : "ArrowRight");
      await said(page, "G\\d+");
      await page.keyboard.type("foot rot");
      await page.keyboard.press("ArrowDown");
      await page.getByText("is none of the choices here").waitFor();
      await settled(page);
      const bar = page.locator("[data-u-comp=formula-bar] .univer-w-40");
      expect(await bar.count()).toBe(1);
      expect(await bar.isVisible()).toBe(false);
      // The button for the list hangs at the cell: the whole of it is above the bar to scroll with.
      const low = async (): Promise<number> => {
        const [button, tab] = [page.getByRole("button", { name: /^Choices for/ }), page.getByRole("tablist").first()];
        const [at, below] = [await button.boundingBox(), await tab.boundingBox()];
        return (below?.y ?? 0) - (at?.y ?? 0) - (at?.height ?? 0);
      };
      await expect.poll(low).toBeGreaterThan(8);
      await page.close();
    },
    5 * minutes,
  );

  it(
    "the panel can be put away: the sheet takes its room and F6 passes it by; the way to one's own book brings it back",
    async () => {
      const { page } = await practice.open();
      const wide = async (): Promise<number> => (await page.locator(".grid").boundingBox())?.width ?? 0;
      const before = await wide();
      await page.getByRole("button", { name: "Hide panel" }).click();
      await expect.poll(wide).toBeGreaterThan(before + 300);
      expect(await page.getByRole("button", { name: "Show panel" }).getAttribute("aria-expanded")).toBe("false");
      expect(await barriers(page)).toEqual([]);
      // Clicked on, it leaves the keys with whoever types.
      await expect.poll(() => isInSheet(page)).toBe(true);
      await page.keyboard.press("Shift+F6");
      await expect.poll(() => focused(page)).toBe("Open a workbook");
      await page.keyboard.press("Shift+F6");
      await expect.poll(() => focused(page)).toBe("Start");
      await page.keyboard.press("F6");
      await expect.poll(() => focused(page)).toBe("Open a workbook");
      // The flock that the page begins with is not theirs.
      await page.getByRole("button", { name: "Start your own" }).click();
      await expect.poll(() => focused(page)).toBe("Start a workbook");
      await page.getByRole("button", { name: "Start: Flock foot book", exact: true }).click();
      await expect
        .poll(() => page.locator(".note").textContent())
        .toMatch(/^flock-foot-book\.xlsx is open\.(?: Every formula has just been worked out\.)?$/);
      await expect.poll(() => isInSheet(page)).toBe(true);
      await page.close();
    },
    5 * minutes,
  );

  it(
    "at 1024 pixels and magnified to 200 % nothing runs out of the page sideways, and nothing moves for those who asked for that",
    async () => {
      const { page } = await practice.open({ width: 1024, height: 768, stillness: "reduce" });
      const overflow = () => page.evaluate(() => document.documentElement.scrollWidth - innerWidth);
      expect(await overflow()).toBe(0);
      await page.setViewportSize({ width: 640, height: 400 });
      await page.getByRole("heading", { name: "Find a function" }).scrollIntoViewIfNeeded();
      expect(await overflow()).toBe(0);
      await page.setViewportSize({ width: 320, height: 640 });
      expect(await overflow()).toBe(0);
      const moving = await page.evaluate(
        () =>
          [...document.querySelectorAll("*")].filter((element) => {
            const { transitionDuration, animationDuration } = getComputedStyle(element);
            return `${transitionDuration}, ${animationDuration}`
              .split(", ")
              .some((time) => Number.parseFloat(time) > 0);
          }).length,
      );
      expect(moving).toBe(0);
      await page.close();
    },
    5 * minutes,
  );
});
