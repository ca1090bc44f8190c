import type { Browser } from "playwright-core";
import { afterAll, beforeAll, describe, expect, inject, it } from "vitest";
import type { StandInBook } from "../excelStandIn.ts";
import { launch } from "../launch.ts";
import { type Meeting, openPane, partsHaveCome } from "../openPane.ts";
import { violations } from "./violations.ts";

let browser: Browser;
beforeAll(async () => {
  browser = await launch();
});
afterAll(() => browser?.close());

/** Serial of 10 Feb 2026. */
const treated = 46063;
const prevalence = "=FOOT.FLOCKPREV(B2:B4,C2:C4)";
const ofNames = "=_xldudf_FOOT_FLOCKPREV(lame,'My cases'!$C:$C)";
const ofTable = "=FOOT.CLEARDATE(Mycases[Treated],Mycases[@Days])";
const many = '=FOOT.CLEARDATE(A2:A3,28,"whole days")';
const lost = "=FOOT.FLOCKPREV(nowhere,C2:C4)";
const stored = "=FOOT.FLOCKPREV(B2:B3,C2:C3)";

const book: StandInBook = {
  selected: "Gathers!E2",
  sets: ["ExcelApi 1.12"],
  sheets: [
    {
      name: "Gathers",
      rows: [
        ["Date", "Lame", "Seen", "", "Answer"],
        [treated, 3, 20, "", prevalence],
        [treated + 30, 21, 20, "", stored],
        ["", 2, 20, "", "a text"],
        ["", "", "", "", many],
        ["", "", "", "", 46121],
        ["", "", "", "", lost],
      ],
    },
    {
      name: "My cases",
      tables: ["A1:D3"],
      rows: [
        ["Treated", "Days", "Counts", "Clear"],
        [treated, 28, 4, ofTable],
        [treated, "", 5, ofNames],
      ],
    },
  ],
  names: { lame: "Gathers!B2:B4" },
  answers: {
    [prevalence]: [["#VALUE!"]],
    [stored]: [[0.6]],
    [many]: [[46092], [46121]],
    [ofTable]: [["#VALUE!"]],
    [ofNames]: [["#VALUE!"]],
    [lost]: [["#NAME?"]],
  },
};

const open = (change: Partial<StandInBook> = {}, meeting: Meeting = {}) =>
  openPane(browser, inject("addInFolder"), { vendor: { ...book, ...change }, hash: "#explain", ...meeting });

it("says the sentence of an error, what each argument holds, and leads to the row to mend", async () => {
  const { page, calls, troubles } = await open();
  await page
    .getByText("#VALUE!: lame, row 2: 21 is more than the 20 seen; enter the lame sheep among those seen")
    .waitFor();
  expect(await page.locator(".explanation .signature").textContent()).toBe(prevalence);
  expect(await page.locator(".explanation dd").allTextContents()).toEqual([
    expect.stringMatching(/B2:B4 3 cells: 3, 21, 2$/),
    expect.stringMatching(/C2:C4 3 cells: 20, 20, 20$/),
  ]);
  await page.getByRole("button", { name: "lame, row 2: go to Gathers!B3" }).click();
  await expect.poll(calls).toEqual([["select", "Gathers!B3"]]);
  // What is to be mended next stays in view.
  expect(await page.locator(".explanation > .fault", { hasText: "#VALUE!" }).count()).toBe(1);
  expect(troubles).toEqual([]);
  await page.close();
});

it("explains the next cell when it is asked to, and says so of a cell without a formula", async () => {
  const { page, select } = await open();
  await page.locator(".explanation").waitFor();
  await select("Gathers!E3");
  await page.getByRole("button", { name: "Explain the selected cell" }).click();
  await page.getByText("It gives 60.0%.").waitFor();
  await select("Gathers!E4");
  await page.getByRole("button", { name: "Explain the selected cell" }).click();
  await page.getByRole("status").getByText("Gathers!E4 holds no formula.").waitFor();
  expect(await page.locator(".explanation").count()).toBe(0);
  await page.close();
});

it("finds names, whole columns down to the last row in use, and a formula as a file spells it", async () => {
  const { page, calls } = await open({ selected: "My cases!D3" });
  await page.getByText("#VALUE!: seen, row 1: ").waitFor();
  expect(await page.locator(".explanation .signature").textContent()).toBe("=FOOT.FLOCKPREV(lame,'My cases'!$C:$C)");
  expect(await page.locator(".explanation dd").allTextContents()).toEqual([
    expect.stringMatching(/lame 3 cells: 3, 21, 2$/),
    expect.stringMatching(/'My cases'!\$C:\$C 3 cells: Counts, 4, 5$/),
  ]);
  await page.getByRole("button", { name: "seen, row 1: go to 'My cases'!C1" }).click();
  await expect.poll(calls).toEqual([["select", "My cases!C1"]]);
  await page.close();
});

it("finds columns of a table and the cell of its row", async () => {
  const { page } = await open({ selected: "My cases!D2" });
  await page.locator(".explanation").waitFor();
  expect(await page.locator(".explanation dd").allTextContents()).toEqual([
    expect.stringMatching(/Mycases\[Treated\] 2 cells: 10 Feb 2026, 10 Feb 2026$/),
    expect.stringMatching(/Mycases\[@Days\] Holds 28\.$/),
    expect.any(String),
  ]);
  await page.close();
});

it("explains the formula whose answer fills the cell, with all that it fills", async () => {
  const { page } = await open({ selected: "Gathers!E6" });
  await page.getByText("It fills 2 rows; the first: 11 Mar 2026.").waitFor();
  expect(await page.locator(".explanation strong").first().textContent()).toBe("Gathers!E5");
  await page.close();
});

it("takes the cell alone where Excel is too old to tell what an answer fills", async () => {
  const { page } = await open({ selected: "Gathers!E5", sets: [] });
  await page.getByText("It gives 11 Mar 2026.").waitFor();
  await page.close();
});

it("leaves out a range that is nowhere, and still says what is known", async () => {
  const { page } = await open({ selected: "Gathers!E7" });
  await page.getByText("#NAME?: The spreadsheet does not know a name").waitFor();
  expect(await page.locator(".explanation dd").allTextContents()).toEqual([
    expect.stringMatching(/nowhere $/),
    expect.stringMatching(/C2:C4 3 cells: 20, 20, 20$/),
  ]);
  await page.close();
});

it("reads a column that is too long to be handed over at once", async () => {
  const rows = [...Array.from({ length: 59_999 }, () => [1, 20]), [21, 20, "=FOOT.FLOCKPREV(A:A,B:B)"]];
  const { page } = await open({
    selected: "Long!C60000",
    sheets: [{ name: "Long", rows }],
    answers: { "=FOOT.FLOCKPREV(A:A,B:B)": [["#VALUE!"]] },
  });
  await page.getByRole("button", { name: "lame, row 60000: go to Long!A60000" }).waitFor();
  await page.getByText("60000 cells: 1, 1, 1, 1, 1, …").waitFor();
  await page.close();
});

it("waits for the functions where they come after it, and says their sentence", async () => {
  const functionsAfter = new Promise((resolve) => setTimeout(resolve, 1500));
  const { page } = await open({}, { functionsAfter });
  await page.getByText("#VALUE!: lame, row 2: 21 is more than the 20 seen").waitFor();
  await page.close();
});

describe("without the functions beside it, or without Excel", () => {
  it("explains all but the sentence of the error", async () => {
    const { page } = await open({}, { missing: (file) => file === "functions.js" });
    await page.getByText("It gives #VALUE!.").waitFor();
    expect(await page.getByRole("list", { name: "To mend" }).count()).toBe(0);
    await page.close();
  });

  it("says that a spreadsheet is needed", async () => {
    const { page } = await openPane(browser, inject("addInFolder"), { hash: "#explain" });
    await page.getByText("This part needs a spreadsheet.").waitFor();
    await page.close();
  });
});

it.each(["light", "dark"] as const)("is for every reader and fits 320 pixels, %s", async (look) => {
  for (const selected of ["Gathers!E2", "Gathers!E4", "My cases!D2"]) {
    const { page } = await open({ selected }, { look });
    await page.getByRole("status").getByText(selected.replace("My cases", "'My cases'")).waitFor();
    await partsHaveCome(page);
    expect(await violations(page)).toEqual([]);
    for (const size of ["100%", "200%"]) {
      await page.evaluate((given) => {
        document.documentElement.style.fontSize = given;
      }, size);
      expect(await page.evaluate(() => document.documentElement.scrollWidth), size).toBeLessThanOrEqual(320);
    }
    await page.close();
  }
});
