import { mkdirSync } from "node:fs";
import { join } from "node:path";
import process from "node:process";
import { chromium, type Page } from "playwright-core";
import { provideBrowser } from "../provideBrowser.ts";
import { bundlePractice } from "./bundlePractice.ts";
import { serveFolder } from "./serveFolder.ts";

const built = join(process.cwd(), "dist", "practice");
const pictures = join(process.cwd(), "docs", "pictures");

interface View {
  readonly name: string;
  readonly width: number;
  readonly scheme: "light" | "dark";
  readonly show: (page: Page) => Promise<unknown>;
}

const nothing = async (): Promise<void> => undefined;
const drawn = (page: Page) => page.getByRole("button", { name: "Picture", exact: true }).click();
const sheet = (name: string) => (page: Page) => page.locator(".grid").getByText(name, { exact: true }).first().click();

const views: readonly View[] = [
  { name: "practice-sheet", width: 1280, scheme: "light", show: sheet("Today") },
  { name: "practice-sheet-dark", width: 1280, scheme: "dark", show: sheet("Today") },
  { name: "practice-sheet-picture", width: 1280, scheme: "light", show: drawn },
  { name: "practice-sheet-picture-dark", width: 1280, scheme: "dark", show: drawn },
  { name: "practice-sheet-narrow", width: 640, scheme: "light", show: nothing },
];

/** `npm run pictures`: the views of the practice sheet as they look now. */
async function takePictures(): Promise<void> {
  mkdirSync(pictures, { recursive: true });
  await bundlePractice(built);
  const serving = await serveFolder(built, [0]);
  const browser = await chromium.launch({ executablePath: provideBrowser(), args: ["--headless", "--disable-gpu"] });
  for (const { name, width, scheme, show } of views) {
    const page = await browser.newPage({ viewport: { width, height: 800 }, colorScheme: scheme });
    await page.goto(serving.address, { waitUntil: "commit" });
    await page.getByText("is open.").waitFor({ timeout: 90_000 });
    await show(page);
    // The sheet is painted a moment after it is there.
    await page.waitForTimeout(2000);
    await page.screenshot({ path: join(pictures, `${name}.png`) });
    await page.close();
  }
  await browser.close();
  serving.close();
}

await takePictures();
