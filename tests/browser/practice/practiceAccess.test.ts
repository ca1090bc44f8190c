import type { Page } from "playwright-core";
import { describe, expect, it } from "vitest";
import { cases } from "../../../src/workbooks/tables/cases.ts";
import { columnOf } from "../../workbooks/columnOf.ts";
import { barriers } from "../barriers.ts";
import { goTo, said, toSheet } from "./practicePage.ts";
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
      expect(await focused(page)).toBe("FOOT.FLOCKPREV");
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
      expect(await isInSheet(page)).toBe(true);
      await page.keyboard.press("Tab");
      await said(page, "B1");
      expect(await isInSheet(page)).toBe(true);
      await page.keyboard.press("F6");
      expect(await focused(page)).toBe("Start");
      await page.keyboard.press("F6");
      expect(await focused(page)).toBe("Functions");
      expect(await page.evaluate(() => document.activeElement?.matches(":focus-visible"))).toBe(true);
      await page.keyboard.press("Tab");
      expect(await focused(page)).toBe("Explain");
      await page.keyboard.press("F6");
      expect(await focused(page)).toBe("Open a workbook");
      await page.keyboard.press("Shift+F6");
      expect(await focused(page)).toBe("Functions");
      await page.keyboard.press("F6");
      await page.keyboard.press("F6");
      expect(await isInSheet(page)).toBe(true);
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
      expect(await isInSheet(page)).toBe(false);
      await page.keyboard.press("Control+PageDown");
      await said(page, "A1", /^Settings/);
      expect(await isInSheet(page)).toBe(true);
      await page.keyboard.press("Control+PageUp");
      await said(page, "B2", /^Start/);
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
      expect(await isInSheet(page)).toBe(true);
      await page.keyboard.press("Shift+F6");
      expect(await focused(page)).toBe("Open a workbook");
      await page.keyboard.press("Shift+F6");
      expect(await focused(page)).toBe("Start");
      await page.keyboard.press("F6");
      expect(await focused(page)).toBe("Open a workbook");
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
