import { execFileSync } from "node:child_process";
import { mkdtempSync, readdirSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { setTimeout as pause } from "node:timers/promises";
import puppeteer from "puppeteer-core";
import { launch } from "../launch.ts";

const patience = 90_000;

/** What both browsers' drivers are asked to do; the person uses keys alone. */
export interface Driven {
  readonly keys: {
    readonly type: (text: string) => Promise<void>;
    readonly press: (key: string) => Promise<void>;
    readonly down: (key: string) => Promise<void>;
    readonly up: (key: string) => Promise<void>;
  };
  readonly mouse: { readonly click: (x: number, y: number) => Promise<void> };
  readonly evaluate: <T>(ask: () => T) => Promise<T>;
  readonly text: (selector: string) => Promise<string>;
  /** Files that arrived among the downloads. */
  readonly downloads: () => Promise<readonly string[]>;
  readonly choose: (file: string) => Promise<void>;
  /** Addresses asked for that are outside the file. */
  readonly abroad: readonly string[];
  readonly troubles: readonly string[];
  readonly close: () => Promise<void>;
}

const isOutside = (url: string): boolean => !/^(?:file|data|blob|about):/.test(url);

/** @param address - of the page, which may be a file */
export async function inChromium(address: string): Promise<Driven> {
  const folder = mkdtempSync(join(tmpdir(), "soundfold-chromium-"));
  const browser = await launch();
  const opened = await browser.newPage({ viewport: { width: 1280, height: 800 }, acceptDownloads: true });
  const [abroad, troubles, saved]: string[][] = [[], [], []];
  opened.on("request", (request) => isOutside(request.url()) && abroad?.push(request.url()));
  opened.on("pageerror", ({ message }) => troubles?.push(message));
  opened.on("console", (message) => message.type() === "error" && troubles?.push(message.text()));
  opened.on("download", async (download) => {
    const path = join(folder, `chromium-${saved?.length}-${download.suggestedFilename()}`);
    await download.saveAs(path);
    saved?.push(path);
  });
  // A box of the browser's own cannot be answered without a person; the page then hands files to the downloads.
  await opened.addInitScript(() => Object.assign(globalThis, { showSaveFilePicker: undefined }));
  await opened.goto(address);
  return {
    keys: opened.keyboard,
    mouse: opened.mouse,
    evaluate: (ask) => opened.evaluate(ask),
    text: async (selector) => (await opened.locator(selector).first().textContent()) ?? "",
    downloads: async () => saved ?? [],
    choose: (file) => opened.locator("input[type=file]").setInputFiles(file),
    abroad: abroad ?? [],
    troubles: troubles ?? [],
    async close() {
      await browser.close();
      rmSync(folder, { recursive: true });
    },
  };
}

function firefoxPath(): string {
  for (const name of ["firefox-esr", "firefox"]) {
    try {
      return execFileSync("which", [name], { encoding: "utf8" }).trim();
    } catch {
      // The next name.
    }
  }
  throw new Error("Firefox is not installed; on Debian: apt-get install firefox-esr");
}

/** @param address - of the page, which may be a file */
export async function inFirefox(address: string): Promise<Driven> {
  const saved = mkdtempSync(join(tmpdir(), "soundfold-firefox-"));
  const browser = await puppeteer.launch({
    browser: "firefox",
    executablePath: firefoxPath(),
    headless: true,
    defaultViewport: { width: 1280, height: 800 },
    extraPrefsFirefox: {
      "browser.download.folderList": 2,
      "browser.download.dir": saved,
      "browser.download.useDownloadDir": true,
      "browser.download.always_ask_before_handling_new_types": false,
    },
  });
  const opened = await browser.newPage();
  const [abroad, troubles]: string[][] = [[], []];
  opened.on("request", (request) => isOutside(request.url()) && abroad?.push(request.url()));
  opened.on("pageerror", (error) => troubles?.push(String(error)));
  await opened.goto(address, { timeout: patience });
  return {
    keys: opened.keyboard as unknown as Driven["keys"],
    mouse: opened.mouse,
    evaluate: (ask) => opened.evaluate(ask) as ReturnType<Driven["evaluate"]> as never,
    text: (selector) => opened.$eval(selector, (element) => element.textContent ?? ""),
    downloads: async () =>
      readdirSync(saved)
        .filter((name) => name.endsWith(".xlsx"))
        .map((name) => join(saved, name)),
    async choose(file) {
      const input = await opened.$("input[type=file]");
      await (input as unknown as { uploadFile: (path: string) => Promise<void> }).uploadFile(file);
    },
    abroad: abroad ?? [],
    troubles: troubles ?? [],
    async close() {
      await browser.close();
      rmSync(saved, { recursive: true });
    },
  };
}

/** Asks until the answer is the one wanted. */
export async function until<T>(ask: () => Promise<T>, isMet: (answer: T) => boolean, wanted: string): Promise<T> {
  const end = Date.now() + patience;
  for (;;) {
    const answer = await ask().catch(() => undefined);
    if (answer !== undefined && isMet(answer)) return answer;
    if (Date.now() > end) throw new Error(`${wanted} did not come; last: ${answer}`);
    await pause(100);
  }
}
