import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { Browser, Page } from "playwright-core";
import { bundlePractice } from "../../../src/build/practice/bundlePractice.ts";
import { serveFolder } from "../../../src/build/practice/serveFolder.ts";
import { goTo, openPractice, said, settled, toSheet, type } from "../practice/practicePage.ts";

interface Picture {
  readonly name: string;
  readonly width?: number;
  readonly height?: number;
  /** What a person does before the picture is taken, from where the picture before left the page. */
  readonly act: (page: Page) => Promise<unknown>;
}

const inPanel = (page: Page, view: string) => page.getByRole("button", { name: view, exact: true }).click();

const pictures: readonly Picture[] = [
  {
    name: "practice-sheet",
    async act(page) {
      await toSheet(page, "Today");
      await goTo(page, "B8");
    },
  },
  {
    name: "practice-sheet-function",
    async act(page) {
      await page.getByRole("link", { name: /^FLOCKPREV/ }).click();
      await page.getByRole("heading", { name: "FOOT.FLOCKPREV" }).waitFor();
    },
  },
  {
    name: "practice-sheet-fault",
    async act(page) {
      await page.getByRole("link", { name: "All functions" }).click();
      await toSheet(page, "Start");
      await type(page, "E6", "=FOOT.FLOCKPREV(24,20)");
      await goTo(page, "E6");
      await said(page, "E6", /#VALUE!/);
      await settled(page);
    },
  },
  {
    name: "practice-sheet-rule",
    async act(page) {
      await toSheet(page, "Cases");
      await goTo(page, "E9");
    },
  },
  {
    name: "practice-sheet-picture",
    height: 2000,
    async act(page) {
      await inPanel(page, "Picture");
      await page.locator(".picture canvas").first().waitFor();
    },
  },
  {
    name: "practice-sheet-opened",
    async act(page) {
      await page.locator("header input[type=file]").setInputFiles("samples/visit-sheet.xlsx");
      // What was typed for the pictures before is in no file.
      await page.getByRole("button", { name: "Close without saving" }).click();
      await page.getByText("visit-sheet.xlsx is open.").waitFor();
      await settled(page);
      await page.getByRole("button", { name: "Save", exact: true }).click();
      await page.getByText("is saved among your downloads.").waitFor();
    },
  },
  { name: "practice-sheet-1024", width: 1024, height: 768, act: (page) => inPanel(page, "Functions") },
  { name: "practice-sheet-magnified", width: 640, height: 1600, act: (page) => page.getByRole("main").focus() },
];

/** Takes the pictures of the practice sheet, in light and in dark. */
export async function practicePictures(browser: Browser, folder: string): Promise<void> {
  const practice = mkdtempSync(join(tmpdir(), "soundfold-pictures-"));
  try {
    await bundlePractice(practice);
    const serving = await serveFolder(practice, [0]);
    for (const look of ["light", "dark"] as const) {
      const { page } = await openPractice(browser, serving.address, { look });
      for (const { name, width = 1280, height = 800, act } of pictures) {
        await page.setViewportSize({ width, height });
        await act(page);
        await painted(page);
        await page.screenshot({ path: join(folder, `${name}-${look}.png`) });
      }
      await page.close();
    }
    serving.close();
  } finally {
    rmSync(practice, { recursive: true, force: true });
  }
}

/** Waits until the page has nothing left to do and has painted twice: the sheet is painted a moment after it has changed. */
const painted = (page: Page): Promise<unknown> =>
  page.evaluate(async () => {
    for (let left = 2; left > 0; left -= 1) {
      await new Promise((done) => requestIdleCallback(done));
      await new Promise((done) => requestAnimationFrame(done));
    }
  });
