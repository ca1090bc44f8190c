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
