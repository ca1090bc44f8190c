import { readFileSync } from "node:fs";
import type { Browser, Page } from "playwright-core";
import { openWorkbook } from "../../../src/workbook/openWorkbook.ts";
import type { Workbook } from "../../../src/workbook/workbook.ts";

// A machine that does much else is slow, and the page is not wrong because of it.
const patience = 90_000;

export interface OpenedPage {
  readonly page: Page;
  /** What went wrong in the page, as its console, its errors and its policy tell. */
  readonly troubles: readonly string[];
  /** Every address outside the page's own that was asked for. */
  readonly abroad: readonly string[];
}

/** How the page is met. */
export interface Meeting {
  readonly width?: number;
  readonly height?: number;
  readonly look?: "light" | "dark";
  readonly stillness?: "reduce" | "no-preference";
  /** A telephone: a finger in place of a pointer. */
  readonly touch?: boolean;
  readonly before?: (page: Page) => Promise<unknown>;
}

/** Opens the page and waits until it says that the flock foot book can be typed into. */
export async function openPractice(browser: Browser, address: string, meeting: Meeting = {}): Promise<OpenedPage> {
  const opened = await startPractice(browser, address, meeting);
  await opened.page.getByText("flock-foot-book.xlsx is open.").waitFor();
  await settled(opened.page);
  return opened;
}

/** Opens the page and waits for nothing. */
export async function startPractice(browser: Browser, address: string, meeting: Meeting = {}): Promise<OpenedPage> {
  const { width = 1280, height = 800, look = "light", stillness = "no-preference", touch = false } = meeting;
  const page = await browser.newPage({
    viewport: { width, height },
    colorScheme: look,
    reducedMotion: stillness,
    acceptDownloads: true,
    hasTouch: touch,
    isMobile: touch,
  });
  page.setDefaultTimeout(patience);
  const troubles: string[] = [];
  const abroad: string[] = [];
  page.on("pageerror", (error) => troubles.push(error.message));
  page.on("console", (message) => {
    if (message.type() === "error") troubles.push(message.text());
  });
  await page.addInitScript(() => {
    // A box of the browser's own cannot be answered without a person; the page then hands files to the downloads.
    if (!("keepPickers" in globalThis))
      Object.assign(globalThis, { showOpenFilePicker: undefined, showSaveFilePicker: undefined });
    document.addEventListener("securitypolicyviolation", ({ violatedDirective, blockedURI }) => {
      console.error(`policy: ${violatedDirective} ${blockedURI}`);
    });
  });
  page.on("request", (request) => {
    const url = request.url();
    if (!url.startsWith(address) && !url.startsWith("blob:") && !url.startsWith("data:")) abroad.push(url);
  });
  await meeting.before?.(page);
  await page.goto(address, { waitUntil: "commit" });
  return { page, troubles, abroad };
}

/** Waits until the page says that nothing is being opened or worked out. */
export const settled = (page: Page): Promise<void> => page.locator('main[aria-busy="false"]').waitFor();

/** What the line below the sheet says of the selected cell, once that is the cell wanted and it says what is wanted. */
export async function said(page: Page, cell: string, wanted = /./): Promise<string> {
  const line = page
    .locator(".status")
    .filter({ has: page.locator("strong", { hasText: new RegExp(` ${cell}$`) }) })
    .filter({ hasText: wanted });
  try {
    await line.waitFor();
  } catch {
    throw new Error(`the line says not ${wanted} of ${cell}, but: ${await page.locator(".status").textContent()}`);
  }
  return (await line.textContent()) ?? "";
}

/** Goes to a cell of the sheet in view by the box that names it. */
export async function goTo(page: Page, cell: string): Promise<void> {
  const box = page.getByLabel("Cell", { exact: true });
  await box.click();
  await box.fill(cell);
  await box.press("Enter");
  await said(page, cell);
}

/** Types into a cell of the sheet in view, and lets the spreadsheet go on to the cell below. */
export async function type(page: Page, cell: string, content: string): Promise<void> {
  await goTo(page, cell);
  await page.keyboard.type(content);
  await enter(page);
  const [, column = "", row = ""] = /^([A-Z]+)(\d+)$/.exec(cell) ?? [];
  await said(page, `${column}${Number(row) + 1}`);
}

/** Ends what is being typed into a cell. While the names that may be meant are listed, Enter would pick one. */
export async function enter(page: Page): Promise<void> {
  await page.evaluate(() => new Promise((done) => requestIdleCallback(done)));
  await page.locator('ul[data-u-comp="sheets-formula-editor"]').waitFor({ state: "detached" });
  await page.keyboard.press("Enter");
}

/** Brings a sheet into view by its tab. */
export async function toSheet(page: Page, name: string): Promise<void> {
  await page.getByRole("tab", { name, exact: true }).click();
  await page.locator(".status strong", { hasText: new RegExp(`^${name} `) }).waitFor();
}

/** Pastes into the selected cell what another program has put there. */
export const paste = (page: Page, kind: "text/plain" | "text/html", content: string): Promise<void> =>
  page.evaluate(
    ([given, text]) => {
      const clipboardData = new DataTransfer();
      clipboardData.setData(given, text);
      document.activeElement?.dispatchEvent(new ClipboardEvent("paste", { clipboardData, bubbles: true }));
    },
    [kind, content] as const,
  );

/** Hands the page a workbook, as a person does who picks a file. */
export const pick = (page: Page, name: string, bytes: Uint8Array): Promise<void> =>
  page.locator("header input[type=file]").setInputFiles({ name, mimeType: "", buffer: Buffer.from(bytes) });

/** Opens a workbook in the page, and waits until it can be typed into. */
export async function openFile(page: Page, name: string, bytes: Uint8Array): Promise<void> {
  await pick(page, name, bytes);
  await page.getByText(`${name} is open.`).waitFor();
  await settled(page);
}

/** Saves the workbook, which hands it to the downloads. */
export async function download(page: Page): Promise<{ readonly name: string; readonly workbook: Workbook }> {
  const saved = page.waitForEvent("download");
  await page.getByRole("button", { name: "Save", exact: true }).click();
  const file = await saved;
  return { name: file.suggestedFilename(), workbook: openWorkbook(readFileSync(await file.path())) };
}
