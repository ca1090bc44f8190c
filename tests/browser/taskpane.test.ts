import { existsSync, readFileSync } from "node:fs";
import { extname, join } from "node:path";
import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, inject, it } from "vitest";
import { catalogue } from "../../functions/catalogue.ts";
import { signature } from "../../src/definition/formulaText.ts";
import { launch } from "./launch.ts";
import { addInUrl } from "./setUp.ts";

let browser: Browser;
beforeAll(async () => {
  browser = await launch();
});
afterAll(() => browser?.close());

const kinds: Readonly<Record<string, string>> = {
  ".html": "text/html",
  ".js": "text/javascript",
  ".css": "text/css",
  ".png": "image/png",
};

interface Opened {
  readonly page: Page;
  /** What went wrong in the page, as its console and its errors tell. */
  readonly troubles: string[];
  /** Addresses outside the add-in's own. */
  readonly abroad: string[];
}

/** Opens the built page; `vendor` is what the vendor's script holds, or undefined where it is blocked. */
async function open(vendor: string | undefined, hash = ""): Promise<Opened> {
  const page = await browser.newPage({ viewport: { width: 320, height: 640 } });
  const opened: Opened = { page, troubles: [], abroad: [] };
  page.on("pageerror", (error) => opened.troubles.push(error.message));
  page.on("console", (message) => {
    if (message.type() === "error") opened.troubles.push(message.text());
  });
  await page.route("**/*", (route) => {
    const url = new URL(route.request().url());
    if (url.origin !== addInUrl) {
      opened.abroad.push(url.href);
      return vendor === undefined ? route.abort() : route.fulfill({ body: vendor, contentType: "text/javascript" });
    }
    const file = join(inject("addInFolder"), url.pathname);
    if (!existsSync(file)) return route.fulfill({ status: 404 });
    return route.fulfill({ body: readFileSync(file), contentType: kinds[extname(file)] ?? "application/octet-stream" });
  });
  await page.goto(`${addInUrl}/taskpane.html${hash}`);
  return opened;
}

const inExcel = `
  const registered = [];
  globalThis.registered = registered;
  globalThis.Office = { onReady: async () => ({ host: "Excel" }), context: {} };
  globalThis.CustomFunctions = { associate: (name) => registered.push(name), Error: class {}, ErrorCode: {} };`;
const inBrowser = "globalThis.Office = { onReady: async () => ({ host: null }) };";

describe("the page of the add-in", () => {
  it("lists every function as it is typed, with what it answers and its caution", async () => {
    const { page, troubles } = await open(inBrowser);
    const shown = await page
      .locator("article")
      .evaluateAll((articles) => articles.map((article) => [...article.children].map((part) => part.textContent)));
    const wanted = catalogue.map((definition) => [
      `=${signature(definition)}`,
      definition.summary,
      ...(definition.caution ? [`Take care: ${definition.caution.words}`] : []),
    ]);
    const byName = (a: readonly (string | null)[], b: readonly (string | null)[]) =>
      String(a[0]) < String(b[0]) ? -1 : 1;
    expect(shown.sort(byName)).toEqual(wanted.sort(byName));
    expect(troubles).toEqual([]);
    await page.close();
  });

  it("gives Excel every function when it runs there", async () => {
    const { page, troubles, abroad } = await open(inExcel);
    await page.getByText("Connected to Excel.").waitFor();
    const registered = await page.evaluate(() => (globalThis as unknown as { registered: string[] }).registered);
    expect(registered).toEqual(catalogue.map(({ name }) => name));
    expect(troubles).toEqual([]);
    expect(abroad).toEqual(["https://appsforoffice.microsoft.com/lib/1/hosted/office.js"]);
    await page.close();
  });

  it("says that it is open in a browser", async () => {
    const { page } = await open(inBrowser);
    await page.getByText("This page is open in a browser.").waitFor();
    await page.close();
  });

  it("is of use when the vendor's script is blocked, and says so within four seconds", async () => {
    const { page, troubles } = await open(undefined);
    expect(await page.locator("article").count()).toBe(catalogue.length);
    await page.getByText("did not load").waitFor({ timeout: 4000 });
    expect(troubles).toEqual(["Failed to load resource: net::ERR_FAILED"]);
    await page.close();
  });

  it("takes no script but its own and the vendor's", async () => {
    const { page } = await open(inBrowser);
    const ran = await page.evaluate(async () => {
      const script = document.createElement("script");
      script.textContent = "globalThis.strange = true";
      document.head.append(script);
      const other = document.createElement("script");
      other.src = "https://example.org/other.js";
      const loaded = new Promise((resolve) => {
        other.onload = () => resolve(true);
        other.onerror = () => resolve(false);
      });
      document.head.append(other);
      const fetched = fetch("https://example.org/").then(
        () => true,
        () => false,
      );
      return ["strange" in globalThis, await loaded, await fetched];
    });
    expect(ran).toEqual([false, false, false]);
    await page.close();
  });

  it("goes to the function that a help link names", async () => {
    const last = catalogue.at(-1)?.name ?? "";
    const { page } = await open(inBrowser, `#${last}`);
    await expect
      .poll(() => page.locator(`#${last}`).evaluate((article) => article.getBoundingClientRect().top < innerHeight))
      .toBe(true);
    await page.close();
  });

  it("fits a pane 320 pixels wide", async () => {
    const { page } = await open(inBrowser);
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(320);
    await page.close();
  });
});
