import type { Browser } from "playwright-core";
import { afterAll, beforeAll, describe, expect, inject, it } from "vitest";
import { catalogue } from "../../../functions/catalogue.ts";
import { signature } from "../../../src/definition/formulaText.ts";
import { launch } from "../launch.ts";
import { type Meeting, openPane } from "../openPane.ts";
import { flock } from "./flock.ts";

let browser: Browser;
beforeAll(async () => {
  browser = await launch();
});
afterAll(() => browser?.close());

const open = (meeting: Meeting = {}) => openPane(browser, inject("addInFolder"), meeting);

describe("finding a function", () => {
  it("lists every function under its topic, in the order of the catalogue", async () => {
    const { page, troubles } = await open();
    await expect
      .poll(() => page.locator(".functions .name").allTextContents())
      .toEqual(catalogue.map(({ name }) => name));
    expect(await page.locator(".functions .summary").allTextContents()).toEqual(
      catalogue.map(({ summary }) => summary),
    );
    expect(troubles).toEqual([]);
    await page.close();
  });

  it("answers a question in plain words, and keeps it on the way back", async () => {
    const { page, troubles } = await open();
    await page.getByLabel("What do you want to know?").fill("when can she be sold");
    await page.getByText("may answer “when can she be sold”").waitFor();
    await page.locator(".functions a").first().click();
    await expect.poll(() => page.locator("h2").textContent()).toBe("FOOT.CLEARDATE");
    await expect.poll(() => page.evaluate(() => document.activeElement?.tagName)).toBe("H2");
    await page.getByRole("link", { name: "All functions" }).click();
    await expect.poll(() => page.getByLabel("What do you want to know?").inputValue()).toBe("when can she be sold");
    expect(troubles).toEqual([]);
    await page.close();
  });

  it("keeps to a topic, and says in words when nothing is found", async () => {
    const { page } = await open();
    await page.getByLabel("Topic").selectOption("watching");
    await expect
      .poll(() => page.locator(".functions .name").allTextContents())
      .toEqual(catalogue.filter(({ topic }) => topic === "watching").map(({ name }) => name));
    await page.getByLabel("What do you want to know?").fill("xylophone");
    await page.getByText("Nothing here answers “xylophone”.").waitFor();
    await page.close();
  });

  it("tells all there is to know of each function", async () => {
    const { page, troubles } = await open();
    for (const definition of catalogue) {
      await page.evaluate((name) => {
        location.hash = name;
      }, definition.name);
      const article = page.locator(`article#${definition.name}`);
      await article.waitFor();
      const text = (await article.textContent()) ?? "";
      const parameters = Object.entries(definition.parameters as Record<string, { description: string }>);
      for (const wanted of [
        `FOOT.${definition.name}`,
        `=${signature(definition)}`,
        definition.summary,
        ...(definition.caution ? [`Take care. ${definition.caution.words}`] : []),
        ...parameters.flatMap(([name, { description }]) => [name, description]),
        ...definition.notes,
        ...definition.sources.map(({ cite }) => cite),
      ])
        expect(text, definition.name).toContain(wanted);
      expect(await article.locator(".example").count(), definition.name).toBe(definition.examples.length);
    }
    expect(troubles).toEqual([]);
    await page.close();
  });

  it("goes to the function that a help link names", async () => {
    const { page } = await open({ hash: "#SALECHECK" });
    expect(await page.locator("h2").textContent()).toBe("FOOT.SALECHECK");
    await page.close();
  });
});

describe("putting a function into the sheet", () => {
  it("asks for each argument, writes the formula and says so", async () => {
    const { page, troubles, calls, select } = await open({ vendor: flock, hash: "#FLOCKPREV" });
    await select("Gathers!B2:B3");
    await page.getByRole("button", { name: "Use selection for lame" }).click();
    await expect.poll(() => page.getByLabel("lame", { exact: true }).inputValue()).toBe("Gathers!B2:B3");
    await select("Gathers!C2:C3");
    await page.getByRole("button", { name: "Use selection for seen" }).click();
    await expect.poll(() => page.getByLabel("seen", { exact: true }).inputValue()).toBe("Gathers!C2:C3");
    await select("Gathers!F2");
    await page.getByRole("button", { name: "Use selection for Cell for the answer" }).click();
    await page.getByText("=FOOT.FLOCKPREV(B2:B3,C2:C3)").waitFor();
    await page.getByRole("button", { name: "Write the formula" }).click();
    await page.getByText("Written into Gathers!F2.").waitFor();
    expect(await calls()).toEqual([
      ["write", "Gathers!F2", "=FOOT.FLOCKPREV(B2:B3,C2:C3)"],
      ["select", "Gathers!F2"],
    ]);
    expect(troubles).toEqual([]);
    await page.close();
  });

  it("can be done by keyboard alone", async () => {
    const { page, calls } = await open({ vendor: flock, hash: "#TAGKEY" });
    await page.getByLabel("tag", { exact: true }).focus();
    await page.keyboard.type("042");
    await page.keyboard.press("Tab");
    await page.keyboard.press("Tab");
    await page.keyboard.type("Gathers!F2");
    await page.keyboard.press("Enter");
    await page.getByText("Written into Gathers!F2.").waitFor();
    expect(await calls()).toContainEqual(["write", "Gathers!F2", '=FOOT.TAGKEY("042")']);
    await page.close();
  });

  it("says beside each line what is wrong, and writes nothing", async () => {
    const { page, calls } = await open({ vendor: flock, hash: "#RECHECKDUE" });
    await page.getByRole("button", { name: "Write the formula" }).click();
    await page.getByText("Not written yet").waitFor();
    const treated = page.getByLabel("treated", { exact: true });
    expect(await treated.getAttribute("aria-invalid")).toBe("true");
    await treated.fill("14/3/2026");
    const described = (await treated.getAttribute("aria-describedby"))?.split(" ").at(-1) ?? "";
    expect(await page.locator(`[id="${described}"]`).textContent()).toContain("03/04 means two days");
    expect(await calls()).toEqual([]);
    await page.close();
  });

  it("asks before it writes over a filled cell, also over a formula that shows nothing", async () => {
    const { page, calls } = await open({ vendor: flock, hash: "#ABOUT" });
    const cell = page.getByLabel("Cell for the answer", { exact: true });
    for (const [filled, holds] of [
      ["Gathers!D2", "wet"],
      ["Gathers!D3", '=""'],
    ] as const) {
      await cell.fill(filled);
      await page.getByRole("button", { name: "Write the formula" }).click();
      await page.getByText(`${filled} already holds ${holds}.`).waitFor();
      await page.getByRole("button", { name: "Keep it" }).click();
    }
    expect(await calls()).toEqual([]);
    await page.getByRole("button", { name: "Write the formula" }).click();
    await page.getByRole("button", { name: "Write over it" }).click();
    await page.getByText("Written into Gathers!D3.").waitFor();
    expect(await calls()).toContainEqual(["write", "Gathers!D3", "=FOOT.ABOUT()"]);
    await page.close();
  });

  it.each([
    ["a protected sheet", { ...flock, failsWith: "AccessDenied" }, "Gathers!F2", "protected, or open for reading only"],
    ["a sheet that is not there", flock, "Barn!F2", "There is no such sheet"],
    [
      "a cell that is being edited",
      { ...flock, failsWith: "InvalidOperationInCellEditMode" },
      "Gathers!F2",
      "Press Enter",
    ],
    ["a trouble nobody thought of", { ...flock, failsWith: "Strange" }, "Gathers!F2", "Excel says: Strange"],
  ])("says in words why it could not be written: %s", async (_, vendor, cell, why) => {
    const { page, troubles } = await open({ vendor, hash: "#ABOUT" });
    await page.getByLabel("Cell for the answer", { exact: true }).fill(cell);
    await page.getByRole("button", { name: "Write the formula" }).click();
    await page.getByRole("alert").getByText(why).waitFor();
    expect(troubles).toEqual([]);
    await page.close();
  });

  it("says in words that a selection in several pieces cannot be used", async () => {
    const { page, select } = await open({ vendor: flock, hash: "#ABOUT" });
    await select("Gathers!A1,C1");
    await page.getByRole("button", { name: "Use selection for Cell for the answer" }).click();
    await page.getByText("not one block of cells").waitFor();
    await page.close();
  });
});
