import { mkdtempSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { Browser, Page } from "playwright-core";
import { bundlePractice } from "../../../src/build/practice/bundlePractice.ts";
import { type Serving, serveFolder } from "../../../src/build/practice/serveFolder.ts";

/** Builds the page into a folder of its own and serves it. */
export async function servePractice(): Promise<Serving> {
  const folder = mkdtempSync(join(tmpdir(), "soundfold-practice-"));
  await bundlePractice(folder);
  return serveFolder(folder, [0]);
}

export interface OpenedPage {
  readonly page: Page;
  /** What went wrong in the page, as its console and its errors tell. */
  readonly troubles: readonly string[];
  /** Every address that was asked for. */
  readonly asked: readonly string[];
}

/** Opens the page and waits until the flock foot book is there. */
export async function openPractice(
  browser: Browser,
  address: string,
  colorScheme: "light" | "dark" = "light",
): Promise<OpenedPage> {
  const page = await browser.newPage({ viewport: { width: 1280, height: 800 }, colorScheme, acceptDownloads: true });
  const troubles: string[] = [];
  const asked: string[] = [];
  page.on("pageerror", (error) => troubles.push(error.message));
  page.on("console", (message) => {
    if (message.type() === "error") troubles.push(message.text());
  });
  page.on("request", (request) => asked.push(request.url()));
  await page.goto(address, { waitUntil: "commit" });
  await page.getByText("flock-foot-book.xlsx is open.").waitFor({ timeout: 90_000 });
  return { page, troubles, asked };
}

/** Goes to a cell of the sheet in view, as a person does who types its name. */
export async function goTo(page: Page, cell: string): Promise<void> {
  const box = page.locator(".grid input").first();
  const there = page.locator(".status strong", { hasText: new RegExp(` ${cell}$`) });
  // The spreadsheet listens a moment after it is painted; a person would press Enter again too.
  for (let left = 10; left > 0; left -= 1) {
    await box.click();
    await box.fill(cell);
    await box.press("Enter");
    const arrived = await there.waitFor({ timeout: 5000 }).then(
      () => true,
      () => false,
    );
    if (arrived) return;
  }
  throw new Error(`the sheet did not go to ${cell}; it says ${await page.locator(".status").textContent()}`);
}

/** Types into a cell of the sheet in view. */
export async function type(page: Page, cell: string, content: string): Promise<void> {
  await goTo(page, cell);
  await page.keyboard.type(content);
  await page.keyboard.press("Enter");
}

/** What the status line says of a cell, once it says what is wanted. */
export async function said(page: Page, cell: string, wanted: RegExp): Promise<string> {
  await goTo(page, cell);
  const status = page.locator(".status");
  await status.filter({ hasText: wanted }).waitFor({ timeout: 60_000 });
  return (await status.textContent()) ?? "";
}

/** Brings a sheet into view by its tab. */
export async function toSheet(page: Page, name: string): Promise<void> {
  await page.locator(".grid").getByText(name, { exact: true }).first().click();
}
