import type { Browser } from "playwright-core";
import { afterAll, beforeAll, expect, inject, it } from "vitest";
import { version } from "../../../functions/version.ts";
import type { StandInBook } from "../excelStandIn.ts";
import { launch } from "../launch.ts";
import { openPane, type StandIn } from "../openPane.ts";
import { flock } from "./flock.ts";

let browser: Browser;
beforeAll(async () => {
  browser = await launch();
});
afterAll(() => browser?.close());

const open = (vendor: StandInBook) => openPane(browser, inject("addInFolder"), { vendor, hash: "#health" });
const hostCheck = "=FOOT.HOSTCHECK(A1:A2,B1)";
const facts = (vendor: StandInBook) =>
  open(vendor).then(async ({ page }) => {
    await page.getByText("Days are counted from").waitFor();
    const found = await page.locator(".facts dd").allTextContents();
    await page.close();
    return found;
  });

it("says version, date system and what is missing", async () => {
  expect(await facts(flock)).toEqual([version, "1900", "yes", "yes"]);
  expect(await facts({ ...flock, dateSystem: 1904, sets: [] })).toEqual([
    version,
    expect.stringMatching(/^1904: .* four years off$/),
    expect.stringMatching(/^no: give the cells a date or per cent format/),
    "no, this Excel is too old",
  ]);
});

it("tries in a sheet of its own how blank cells arrive, and takes the sheet away again", async () => {
  const answers = {
    [hostCheck]: [
      ["about", "arrives as", "what it means", "what to do"],
      ["blank cell", "0", "a blank cell cannot be told from a 0", "write IF"],
      ["date cell", "the number 46095", "it is read as 14 Mar 2026", "nothing"],
    ],
  };
  const { page, calls, troubles } = await open({ ...flock, answers });
  await page.getByRole("button", { name: "Try it in this workbook" }).click();
  await page.getByText("a blank cell cannot be told from a 0").waitFor();
  expect(await page.locator("tbody tr").count()).toBe(2);
  expect(await calls()).toEqual([
    ["add sheet", "Sheet3"],
    ["write", "Sheet3!B1", 46095],
    ["format", "Sheet3!B1", "d mmm yyyy"],
    ["write", "Sheet3!D1", hostCheck],
    ["delete sheet", "Sheet3"],
  ]);
  expect(troubles).toEqual([]);
  await page.close();
});

it.each([
  ["the functions are not installed", { answers: { [hostCheck]: [["#NAME?"]] } }, "The functions are not installed"],
  ["the formula fails", { answers: { [hostCheck]: [["#VALUE!"]] } }, "The test formula ended in #VALUE!."],
  ["nothing is worked out", {}, "Calculation may be switched to manual"],
])("says so when %s, and still takes its sheet away", async (_, change, words) => {
  const { page } = await open({ ...flock, ...change });
  await page.getByRole("button", { name: "Try it in this workbook" }).click();
  await page.getByRole("alert").getByText(words).waitFor({ timeout: 15_000 });
  expect(await page.evaluate(() => (globalThis as unknown as StandIn).standIn.sheets())).toEqual([
    "Gathers",
    "My cases",
  ]);
  await page.close();
});

it("says so when no sheet can be added", async () => {
  const { page, calls } = await open({ ...flock, closed: true });
  await page.getByRole("button", { name: "Try it in this workbook" }).click();
  await page.getByRole("alert").getByText("the sheet or the workbook is protected").waitFor();
  expect(await calls()).toEqual([]);
  await page.close();
});

const stored = "=_xldudf_FOOT_FLOCKPREV(A1,B1)";
const unknown: StandInBook = {
  ...flock,
  selected: "Open!A1",
  answers: {
    [stored]: [["#NAME?"]],
    "=FOOT.ABOUT()": [["Soundfold"]],
    "=OTHER.NAME()": [["#NAME?"]],
    "=IFERROR(foot.about(),1)": [["#NAME?"]],
  },
  sheets: [
    {
      name: "Open",
      rows: [
        [stored, "=FOOT.ABOUT()", "=OTHER.NAME()", "#NAME?"],
        ["", "=IFERROR(foot.about(),1)"],
      ],
    },
    { name: "Kept", rows: [[], [stored]], protection: "without password" },
    { name: "Shut", rows: [[stored]], protection: "with password" },
    { name: "Empty", rows: [] },
  ],
};

it("enters again the FOOT formulas that show #NAME?, and touches nothing else", async () => {
  const { page, calls, troubles } = await open(unknown);
  await page.getByRole("button", { name: "Enter the FOOT formulas again" }).click();
  await page.getByText("3 formulas entered again.").waitFor();
  await page.getByText("Shut!A1 could not be entered: the sheet is protected with a password").waitFor();
  expect(await calls()).toEqual([
    ["unprotect", "Kept"],
    ["write", "Open!A1", "=FOOT.FLOCKPREV(A1,B1)"],
    ["write", "Open!B2", "=IFERROR(FOOT.ABOUT(),1)"],
    ["write", "Kept!A2", "=FOOT.FLOCKPREV(A1,B1)"],
    ["protect", "Kept", { allowSort: true }],
  ]);
  expect(troubles).toEqual([]);
  await page.close();
});

it("looks through a sheet that is too large to be handed over at once", async () => {
  const rows = [...Array.from({ length: 29_999 }, () => ["tag", 1]), [1, stored]];
  const { page, calls } = await open({ ...unknown, sheets: [{ name: "Open", rows }] });
  await page.getByRole("button", { name: "Enter the FOOT formulas again" }).click();
  await page.getByText("1 formula entered again.").waitFor();
  expect(await calls()).toEqual([["write", "Open!B30000", "=FOOT.FLOCKPREV(A1,B1)"]]);
  await page.close();
});

it("names each cell that could not be entered, and goes on with the others", async () => {
  const { page, calls } = await open({ ...unknown, refuses: "Open!A1" });
  await page.getByRole("button", { name: "Enter the FOOT formulas again" }).click();
  await page.getByText("Open!A1 could not be entered: Excel does not take it").waitFor();
  expect((await calls()).filter(([what]) => what === "write").map(([, cell]) => cell)).toEqual(["Open!B2", "Kept!A2"]);
  await page.close();
});

it("says so when no formula shows #NAME?", async () => {
  const { page } = await open(flock);
  await page.getByRole("button", { name: "Enter the FOOT formulas again" }).click();
  await page.getByText("No FOOT formula shows #NAME?.").waitFor();
  await page.close();
});
