import { existsSync, readFileSync } from "node:fs";
import { extname, join } from "node:path";
import { pathToFileURL } from "node:url";
import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, expect, inject, it } from "vitest";
import { addInUrl } from "../buildAddIn.ts";
import { launch } from "../launch.ts";
import { violations } from "./violations.ts";

let browser: Browser;
beforeAll(async () => {
  browser = await launch();
});
afterAll(() => browser?.close());

const kinds: Readonly<Record<string, string>> = { ".html": "text/html", ".js": "text/javascript", ".css": "text/css" };

interface Served {
  readonly page: Page;
  /** What went wrong, and what was asked for elsewhere. */
  readonly troubles: readonly string[];
}

/** The files of the add-in as someone else serves them. */
async function serve(
  from: string,
  name: string,
  { look = "light", without = "" }: { readonly look?: "light" | "dark"; readonly without?: string } = {},
): Promise<Served> {
  const page = await browser.newPage({ viewport: { width: 320, height: 640 }, colorScheme: look });
  const troubles: string[] = [];
  page.on("pageerror", (error) => troubles.push(error.message));
  page.on("console", (message) => troubles.push(message.text()));
  await page.route("**/*", (route) => {
    const url = route.request().url();
    if (!url.startsWith(`${from}/`)) {
      troubles.push(url);
      return route.abort();
    }
    const file = url.slice(from.length + 1);
    const path = join(inject("addInFolder"), file);
    if (file === without || !existsSync(path)) return route.fulfill({ status: 404 });
    return route.fulfill({ body: readFileSync(path), contentType: kinds[extname(file)] ?? "application/octet-stream" });
  });
  await page.goto(`${from}/${name}`);
  return { page, troubles };
}

const farm = "https://farm.example.org/feet";

it("hands out the manifest for the address it is served from", async () => {
  const { page, troubles } = await serve(farm, "index.html");
  await page.getByText(`Made for ${farm}`).waitFor();
  const saved = page.waitForEvent("download");
  await page.getByRole("link", { name: "Save manifest.xml" }).click();
  const file = await saved;
  expect(file.suggestedFilename()).toBe("manifest.xml");
  const built = readFileSync(join(inject("addInFolder"), "manifest.xml"), "utf8");
  expect(built).toContain(`<AppDomain>${addInUrl}</AppDomain>`);
  expect(readFileSync(await file.path(), "utf8")).toBe(
    built
      .replaceAll(`${addInUrl}/`, `${farm}/`)
      .replaceAll(`<AppDomain>${addInUrl}<`, "<AppDomain>https://farm.example.org<"),
  );
  expect(troubles).toEqual([]);
  await page.close();
});

it("hands out the list of functions with its help at this address, where it was built for another", async () => {
  const saved = async (from: string) => {
    const { page, troubles } = await serve(from, "index.html");
    await page.getByText(`Made for ${from}`).waitFor();
    await page.waitForLoadState("networkidle");
    const link = page.getByRole("link", { name: "Save functions.json" });
    if ((await link.count()) === 0) return undefined;
    const download = page.waitForEvent("download");
    await link.click();
    const text = readFileSync(await (await download).path(), "utf8");
    expect(troubles).toEqual([]);
    await page.close();
    return text;
  };
  const built = readFileSync(join(inject("addInFolder"), "functions.json"), "utf8");
  expect(built).toContain(`${addInUrl}/taskpane.html#`);
  expect(await saved(farm)).toBe(built.replaceAll(`${addInUrl}/`, `${farm}/`));
  expect(await saved(addInUrl)).toBeUndefined();
});

it.each(["light", "dark"] as const)("opened from the disk, it says what to do, %s", async (look) => {
  const page = await browser.newPage({ viewport: { width: 320, height: 640 }, colorScheme: look });
  const troubles: string[] = [];
  page.on("console", (message) => troubles.push(message.text()));
  await page.goto(pathToFileURL(join(inject("addInFolder"), "index.html")).href);
  await page.getByText("This page was opened from the disk. Put the whole folder on a web server").waitFor();
  expect(await page.getByRole("link", { name: /^Save/ }).count()).toBe(0);
  expect(troubles).toEqual([]);
  // This one asks for the files beside the page, as the page itself does not.
  expect(await violations(page)).toEqual([]);
  await page.close();
});

it("hands out none where Excel would not take the address, or the file is not there, and says why", async () => {
  const plain = await serve("http://farm.example.org/feet", "index.html");
  await plain.page.getByText("begins with https:// only").waitFor();
  expect(await plain.page.getByRole("link", { name: "Save manifest.xml" }).count()).toBe(0);
  await plain.page.close();
  const bare = await serve(farm, "index.html", { without: "manifest.xml" });
  await bare.page.getByText("manifest.xml is not beside this page").waitFor();
  expect(await bare.page.getByRole("link", { name: "Save manifest.xml" }).count()).toBe(0);
  await bare.page.close();
});

it.each(["light", "dark"] as const)("is for every reader, fits 320 pixels and leads on, %s", async (look) => {
  for (const name of ["index.html", "support.html", "privacy.html"]) {
    const { page, troubles } = await serve(farm, name, { look });
    if (name === "index.html") await page.getByText("Made for").waitFor();
    expect(await violations(page), name).toEqual([]);
    for (const size of ["100%", "200%"]) {
      await page.evaluate((given) => {
        document.documentElement.style.fontSize = given;
      }, size);
      expect(await page.evaluate(() => document.documentElement.scrollWidth), `${name} ${size}`).toBeLessThanOrEqual(
        320,
      );
    }
    const links = await page.locator("a:not([download])").evaluateAll((all) => all.map((a) => a.getAttribute("href")));
    expect(links.length).toBeGreaterThan(0);
    for (const link of links)
      expect(existsSync(join(inject("addInFolder"), link ?? "")), `${name}: ${link}`).toBe(true);
    expect(troubles, name).toEqual([]);
    await page.close();
  }
});
