import type { Browser } from "playwright-core";
import { afterAll, beforeAll, describe, expect, inject, it } from "vitest";
import { catalogue } from "../../../functions/catalogue.ts";
import { viewNames } from "../../../src/pages/taskPane/place.ts";
import { launch } from "../launch.ts";
import { type Meeting, openPane, partsHaveCome } from "../openPane.ts";
import { flock } from "./flock.ts";
import { violations } from "./violations.ts";

let browser: Browser;
beforeAll(async () => {
  browser = await launch();
});
afterAll(() => browser?.close());

const open = (meeting: Meeting = {}) => openPane(browser, inject("addInFolder"), meeting);
const hashes = [...viewNames.map((view) => `#${view}`), "#CASCADEDAYS", "#SALECHECK", "#LAMECOST"];

describe.each(["light", "dark"] as const)("for every reader, %s", (look) => {
  it.each(hashes)("%s in Excel and in a browser", async (hash) => {
    for (const vendor of [flock, "browser"] as const) {
      const { page, troubles } = await open({ vendor, hash, look });
      await page.getByText(vendor === "browser" ? "Open in a browser" : "Connected to Excel").waitFor();
      await partsHaveCome(page);
      expect(await violations(page)).toEqual([]);
      expect(troubles).toEqual([]);
      await page.close();
    }
  });

  it("a form with its faults, and findings with everything unfolded", async () => {
    const form = await open({ vendor: flock, hash: "#CLEARDATE", look });
    await form.page.getByRole("button", { name: "Write the formula" }).click();
    await form.page.locator("summary").first().click();
    expect(await violations(form.page)).toEqual([]);
    await form.page.close();
    const records = await open({ vendor: { ...flock, selected: "My cases!C5" }, hash: "#records", look });
    await records.page.getByRole("button", { name: "Check the selected records" }).click();
    await records.page.locator("summary").click();
    expect(await violations(records.page)).toEqual([]);
    await records.page.close();
  });
});

describe("in a narrow pane", () => {
  it.each([...hashes, ...["#RECORDCHECK", "#HOSTCHECK", "#FUNNEL"]])(
    "%s fits 320 pixels, also with letters twice as large",
    async (hash) => {
      const { page } = await open({ vendor: flock, hash });
      await page.getByText("Connected to Excel").waitFor();
      await partsHaveCome(page);
      for (const size of ["100%", "200%"]) {
        await page.evaluate((given) => {
          document.documentElement.style.fontSize = given;
        }, size);
        expect(await page.evaluate(() => document.documentElement.scrollWidth), size).toBeLessThanOrEqual(320);
      }
      await page.close();
    },
  );
});

describe("by keyboard", () => {
  it("reaches every part, shows where it is, and leads into what was opened", async () => {
    const { page } = await open();
    await page.keyboard.press("Tab");
    for (const name of ["Functions", "Explain", "Check records", "Workbooks", "Is it all right?", "Cautions"]) {
      await expect.poll(() => page.evaluate(() => document.activeElement?.textContent)).toBe(name);
      const outline = await page.evaluate(() => getComputedStyle(document.activeElement as Element).outlineStyle);
      expect(outline).toBe("solid");
      await page.keyboard.press("Tab");
    }
    await page.locator("nav").getByRole("link", { name: "Cautions" }).focus();
    await page.keyboard.press("Enter");
    await page.getByRole("heading", { name: "Cautions" }).waitFor();
    // The heading is drawn first, and then gets the focus.
    await expect.poll(() => page.evaluate(() => document.activeElement?.tagName)).toBe("H2");
    expect(await page.locator("nav").getByRole("link", { name: "Cautions" }).getAttribute("aria-current")).toBe("page");
    await page.close();
  });
});

it("moves nothing for those who asked for stillness", async () => {
  const durations = async (stillness: "reduce" | "no-preference") => {
    const { page } = await open({ stillness });
    const found = await page
      .locator("a, button, input")
      .evaluateAll((parts) => [...new Set(parts.map((part) => getComputedStyle(part).transitionDuration))]);
    await page.close();
    return found;
  };
  expect(await durations("reduce")).toEqual(["0s"]);
  expect(await durations("no-preference")).toContain("0.12s");
});

describe("the vendor's script", () => {
  it("gives Excel every function when the page runs there, and asks nobody else", async () => {
    const { page, troubles, abroad } = await open({ vendor: flock });
    await page.getByText("Connected to Excel").waitFor();
    const registered = await page.evaluate(() =>
      (globalThis as unknown as { standIn: { calls: string[][] } }).standIn.calls.map(([, name]) => name),
    );
    expect(registered).toEqual(catalogue.map(({ name }) => name));
    expect(troubles).toEqual([]);
    expect(abroad).toEqual(["https://appsforoffice.microsoft.com/lib/1/hosted/office.js"]);
    await page.close();
  });

  it.each(["blocked", "hanging"] as const)(
    "may be %s: the page is usable at once, and says so within 3 seconds",
    async (vendor) => {
      const { page, troubles } = await open({ vendor, ownClock: true });
      await page.getByLabel("What do you want to know?").fill("lame");
      await page.getByText("may answer “lame”").waitFor();
      // On the page's own clock, so that a busy machine makes no difference.
      await page.clock.fastForward(3000);
      await page.getByText("Not connected").waitFor();
      await page.getByRole("link", { name: "Check records" }).click();
      await page.getByText("it did not load").waitFor();
      expect(troubles).toEqual(vendor === "blocked" ? ["Failed to load resource: net::ERR_FAILED"] : []);
      await page.close();
    },
  );

  it("may be slow: the page is connected when it comes", async () => {
    let come = (): void => {};
    const after = new Promise<void>((resolve) => {
      come = resolve;
    });
    const { page } = await open({ vendor: flock, after, ownClock: true });
    await page.clock.fastForward(3000);
    await page.getByText("Not connected").waitFor();
    come();
    await page.getByText("Connected to Excel").waitFor();
    await page.close();
  });

  it("is not needed in a browser, where each part says whether it needs a spreadsheet", async () => {
    const { page, troubles } = await open();
    await page.getByText("Open in a browser, without a spreadsheet").waitFor();
    for (const view of ["explain", "records", "workbooks", "health", "FLOCKPREV"]) {
      await page.evaluate((hash) => {
        location.hash = hash;
      }, view);
      await page.getByText("This part needs a spreadsheet.").waitFor();
    }
    await page.evaluate(() => {
      location.hash = "cautions";
    });
    await page.getByRole("heading", { name: "Cautions" }).waitFor();
    expect(await page.getByText("This part needs a spreadsheet.").count()).toBe(0);
    expect(troubles).toEqual([]);
    await page.close();
  });
});

describe("a part that is fetched later", () => {
  it("says that it cannot be fetched, and comes when it can", async () => {
    let away = true;
    const { page } = await open({ hash: "#records", missing: (file) => away && file.startsWith("records.") });
    await page.getByRole("alert").getByText("This part could not be fetched.").waitFor();
    expect(await page.getByRole("heading", { name: "Check my records" }).count()).toBe(1);
    away = false;
    await page.getByRole("button", { name: "Try again" }).click();
    await page.getByText("Click into your treatment records").waitFor();
    expect(await page.getByRole("alert").count()).toBe(0);
    await page.close();
  });

  it("is fetched ahead, so that a pane that stays open does not need the files of its first day", async () => {
    let away = false;
    const fetched = new Set<string>();
    const { page, troubles } = await open({
      missing: (file) => {
        fetched.add(file.split(".")[0] ?? "");
        return away && file.endsWith(".js");
      },
    });
    for (const part of ["explain", "records", "workbooks", "health", "cautions", "formula"])
      await expect.poll(() => fetched.has(part)).toBe(true);
    await page.waitForLoadState("networkidle");
    away = true;
    for (const title of ["Explain", "Check records", "Workbooks", "Is it all right?", "Cautions"])
      await page.locator("nav").getByRole("link", { name: title }).click();
    await page.getByText("What no formula knows.").waitFor();
    expect(troubles).toEqual([]);
    await page.close();
  });
});

it("takes no script but its own and the vendor's, and the tests hear of a breach", async () => {
  const { page, troubles } = await open();
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
  const breaches = troubles.filter((text) => text.startsWith("policy: "));
  expect(breaches.map((text) => text.split(" ")[1]).sort()).toEqual([
    "connect-src",
    "script-src-elem",
    "script-src-elem",
  ]);
  await page.close();
});

it("keeps nothing in the browser", async () => {
  const { page } = await open({ vendor: { ...flock, selected: "My cases!C5" }, hash: "#records" });
  await page.getByRole("button", { name: "Check the selected records" }).click();
  await page.getByText("Looked at 4 records").waitFor();
  const kept = await page.evaluate(async () => [
    localStorage.length,
    sessionStorage.length,
    document.cookie,
    (await indexedDB.databases()).length,
  ]);
  expect(kept).toEqual([0, 0, "", 0]);
  await page.close();
});
