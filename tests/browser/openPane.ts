import { existsSync, readFileSync } from "node:fs";
import { extname, join } from "node:path";
import type { Browser, Page } from "playwright-core";
import { words } from "../../src/pages/words.ts";
import { addInUrl } from "./buildAddIn.ts";
import { excelStandIn, type StandInBook, type StandInCall } from "./excelStandIn.ts";

const kinds: Readonly<Record<string, string>> = {
  ".html": "text/html",
  ".js": "text/javascript",
  ".css": "text/css",
  ".png": "image/png",
};

/** How the page is met. */
export interface Meeting {
  /** What the vendor's script does: says that this is a browser, is Excel with a workbook, fails, or never comes. */
  readonly vendor?: "browser" | "blocked" | "hanging" | StandInBook;
  /** The vendor's script comes only when this is done. */
  readonly after?: Promise<unknown>;
  readonly hash?: string;
  readonly width?: number;
  readonly height?: number;
  readonly look?: "light" | "dark";
  readonly stillness?: "reduce" | "no-preference";
  /** The functions come only when this is done. */
  readonly functionsAfter?: Promise<unknown>;
  /** Whether a file of the add-in is not to be had. */
  readonly missing?: (file: string) => boolean;
  /** The test moves the page's clock. */
  readonly ownClock?: boolean;
}

export interface Pane {
  readonly page: Page;
  /** What went wrong in the page, as its console, its errors and its policy tell. */
  readonly troubles: string[];
  /** Addresses outside the add-in's own that the page asked for. */
  readonly abroad: string[];
  /** What the stand-in was asked, the registration of the functions left out. */
  readonly calls: () => Promise<readonly StandInCall[]>;
  readonly select: (address: string) => Promise<void>;
}

/** Opens the built pane with a stand-in for the vendor's script. */
export async function openPane(browser: Browser, folder: string, meeting: Meeting = {}): Promise<Pane> {
  const { vendor = "browser", hash = "", width = 320, height = 640, look = "light", stillness = "reduce" } = meeting;
  const page = await browser.newPage({ viewport: { width, height }, colorScheme: look, reducedMotion: stillness });
  const troubles: string[] = [];
  const abroad: string[] = [];
  page.on("pageerror", (error) => troubles.push(error.message));
  page.on("console", (message) => {
    if (message.type() === "error" || message.type() === "warning") troubles.push(message.text());
  });
  await page.addInitScript(() => {
    document.addEventListener("securitypolicyviolation", ({ violatedDirective, blockedURI }) => {
      console.error(`policy: ${violatedDirective} ${blockedURI}`);
    });
  });
  await page.route("**/*", async (route) => {
    const url = new URL(route.request().url());
    if (url.origin !== addInUrl) {
      abroad.push(url.href);
      if (vendor === "hanging") return;
      await meeting.after;
      return vendor === "blocked"
        ? route.abort()
        : route.fulfill({ body: scriptOf(vendor), contentType: "text/javascript" });
    }
    const file = join(folder, url.pathname);
    if (!existsSync(file) || meeting.missing?.(url.pathname.slice(1))) return route.fulfill({ status: 404 });
    if (url.pathname === "/functions.js") await meeting.functionsAfter;
    return route.fulfill({ body: readFileSync(file), contentType: kinds[extname(file)] ?? "application/octet-stream" });
  });
  if (meeting.ownClock) await page.clock.install();
  await page.goto(`${addInUrl}/taskpane.html${hash}`, { waitUntil: "commit" });
  await page.locator("h2").first().waitFor();
  await partsHaveCome(page);
  return {
    page,
    troubles,
    abroad,
    calls: async () =>
      (await page.evaluate(() => (globalThis as unknown as StandIn).standIn.calls)).filter(
        ([what]) => what !== "associate",
      ),
    select: (address) => page.evaluate((given) => (globalThis as unknown as StandIn).standIn.select(given), address),
  };
}

/** Waits until no part of the page is still being fetched. */
export const partsHaveCome = (page: Page): Promise<void> =>
  page.getByText(words.pane.working).waitFor({ state: "detached" });

export interface StandIn {
  readonly standIn: {
    readonly calls: readonly StandInCall[];
    readonly select: (address: string) => void;
    readonly sheets: () => readonly string[];
    /** How often the page has waited for Excel. */
    readonly syncs: () => number;
    /** What a cell shows: `Cases!B3`. */
    readonly shown: (cell: string) => unknown;
  };
}

// Runners that keep the names of functions call a helper for it that the page does not have.
const scriptOf = (vendor: "browser" | StandInBook): string =>
  vendor === "browser"
    ? "globalThis.Office = { onReady: async () => ({ host: null }) };"
    : `globalThis.__name ??= (given) => given;(${excelStandIn})(${JSON.stringify(vendor)})`;
