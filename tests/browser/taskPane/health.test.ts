import type { Browser, Page } from "playwright-core";
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

const again = "Enter the FOOT formulas again";
const syncs = (page: Page) => page.evaluate(() => (globalThis as unknown as StandIn).standIn.syncs());
/** How often Excel is waited for until the pane has said something. */
async function syncsOf(vendor: StandInBook, said: string): Promise<number> {
  const { page, troubles } = await open(vendor);
  await page.getByText("Days are counted from").waitFor();
  const before = await syncs(page);
  await page.getByRole("button", { name: again }).click();
  await page.getByText(said).waitFor();
  const after = await syncs(page);
  expect(troubles).toEqual([]);
  await page.close();
  return after - before;
}
const sheetsOf = (count: number, rows: readonly (readonly string[])[], protection?: "without password") =>
  Array.from({ length: count }, (_, index) => ({ name: `Sheet ${index}`, rows, ...(protection && { protection }) }));
const ofSheets = (sheets: StandInBook["sheets"]): StandInBook => ({ ...unknown, selected: "Sheet 0!A1", sheets });

it.each([3, 30])("waits for Excel no oftener where there are %i sheets", async (count) => {
  const text = [["tag", "lame"]];
  // The sheets, their sizes, what they hold.
  expect(await syncsOf(ofSheets(sheetsOf(count, text)), "No FOOT formula shows #NAME?")).toBe(3);
  // And where the formulas stand, what is entered.
  expect(await syncsOf(ofSheets(sheetsOf(count, [[stored]])), `${count} formulas entered again.`)).toBe(5);
  // And the protections lifted and put back.
  const kept = sheetsOf(count, [[stored]], "without password");
  expect(await syncsOf(ofSheets(kept), `${count} formulas entered again.`)).toBe(7);
});

it("asks for more only as there are more cells, a large sheet in blocks among the others", async () => {
  const rows = [...Array.from({ length: 44_999 }, () => ["tag", 1]), [1, stored]];
  const vendor = { ...unknown, sheets: [...sheetsOf(2, [[stored]]), { name: "Large", rows }, ...sheetsOf(1, [["x"]])] };
  const { page, calls } = await open({ ...vendor, selected: "Large!A1" });
  await page.getByText("Days are counted from").waitFor();
  const before = await syncs(page);
  await page.getByRole("button", { name: again }).click();
  await page.getByText("3 formulas entered again.").waitFor();
  // Five blocks of 20,000 cells at most: the two sheets before find no room in the first, the one behind does in the last.
  expect((await syncs(page)) - before).toBe(2 + 6 + 2);
  expect((await calls()).filter(([what]) => what === "write").map(([, cell]) => cell)).toEqual([
    "Sheet 0!A1",
    "Sheet 1!A1",
    "Large!B45000",
  ]);
  await page.close();
});

it("asks by halves for formulas so long that Excel does not hand them over", async () => {
  const long = `="${"x".repeat(8000)}"`;
  const rows = Array.from({ length: 1500 }, (_, row) => [row === 1400 ? stored : long]);
  const { page, calls } = await open({ ...unknown, sheets: [{ name: "Open", rows }] });
  await page.getByRole("button", { name: again }).click();
  await page.getByText("1 formula entered again.").waitFor();
  expect(await calls()).toEqual([["write", "Open!A1401", "=FOOT.FLOCKPREV(A1,B1)"]]);
  await page.close();
});

const typed = '=IFERROR(FOOT.FLOCKPREV(A1,B1),"")';
const list = '=IFERROR(FOOT.NOTCLEAR(A1:A2,B1:B2),"")';
const storedList = "=_xldudf_FOOT_NOTCLEAR(A1:A2,B1:B2)";
const hiding: StandInBook = {
  ...flock,
  selected: "Open!A1",
  stale: { "Open!A1": "" },
  // The second is one that Excel may keep for a function that it does not know.
  names: { Foot_Flockprev: "Open!A1", _xldudf_FOOT_ABOUT: "Open!A1" },
  answers: {
    [typed]: [["0.05"]],
    [list]: [["tag"], ["041"]],
    [storedList]: [["tag"], ["041"], ["042"]],
  },
  sheets: [
    {
      name: "Open",
      rows: [
        [typed, list, storedList],
        ['=IF(A1="","",_xldudf_FOOT_ABOUT())', "041", "041"],
        ["=FOOT.ABOUT()", '=IFERROR(foot_flockprev(A1,B1),"")', "042"],
      ],
    },
    { name: "Own", rows: [['=IFERROR(foot_about(A1),"")']], names: ["foot_about"] },
  ],
};
const shownIn = (page: Page, cell: string) =>
  page.evaluate((at) => (globalThis as unknown as StandIn).standIn.shown(at), cell);

it("finds formulas that hide that they are unknown, and says which were entered only as a precaution", async () => {
  const { page, calls, troubles } = await open(hiding);
  expect(await shownIn(page, "Open!A1")).toBe("");
  await page.getByRole("button", { name: again }).click();
  await page.getByText("2 formulas entered again.").waitFor();
  await page.getByText("To be safe, 2 that hide troubles were entered again").waitFor();
  // Of lists only the first cell is written, with or without a change, and a right formula comes out to the letter.
  expect(await calls()).toEqual([
    ["write", "Open!A1", typed],
    ["write", "Open!B1", list],
    ["write", "Open!C1", "=FOOT.NOTCLEAR(A1:A2,B1:B2)"],
    ["write", "Open!A2", '=IF(A1="","",FOOT.ABOUT())'],
  ]);
  expect(await shownIn(page, "Open!A1")).toBe("0.05");
  expect(troubles).toEqual([]);
  await page.close();
});

it("says that none shows #NAME? where only a precaution was taken", async () => {
  const { page } = await open({ ...hiding, sheets: [{ name: "Open", rows: [[typed]] }] });
  await page.getByRole("button", { name: again }).click();
  const status = page.getByRole("status").filter({ hasText: "To be safe" });
  await status.waitFor();
  expect(await status.textContent()).toMatch(
    /^No FOOT formula shows #NAME\?\. To be safe, 1 that hides troubles was entered again: /,
  );
  await page.close();
});

it("touches only what shows #NAME? in an Excel that does not tell which cells an answer fills", async () => {
  const { page, calls } = await open({ ...unknown, sets: [], sheets: [{ name: "Open", rows: [[stored, typed]] }] });
  await page.getByRole("button", { name: again }).click();
  await page.getByText("1 formula entered again.").waitFor();
  expect((await calls()).map(([, cell]) => cell)).toEqual(["Open!A1"]);
  await page.close();
});

it("leaves an array formula of the old kind whole, says so, and mends the others", async () => {
  const sheets = [{ name: "Open", rows: [[stored], [stored], [stored]], arrays: ["A1:A2"] }];
  const { page, calls } = await open({ ...unknown, sheets });
  await page.getByRole("button", { name: again }).click();
  await page.getByText("1 formula entered again.").waitFor();
  await page.getByText("Open!A1 could not be entered: It did not work. Excel says: You can't change part of").waitFor();
  expect((await calls()).map(([, cell]) => cell)).toEqual(["Open!A3"]);
  await page.close();
});

it("makes formulas again of what Google Sheets left of them, and lets a list stand that would be in its own way", async () => {
  const left = (text: string) => `=IFERROR(__xludf.DUMMYFUNCTION("${text.replaceAll('"', '""')}"),0.05)`;
  const part = left('"COMPUTED_VALUE"');
  const rows = [
    [left("FOOT_FLOCKPREV(A5,B5)"), "", left("FOOT_NOTCLEAR(A5,B5,C5)"), part],
    [part, "", part],
    ["", left("ARRAYFORMULA(FOOT_ABOUT())")],
    [left("FOOT_ABOUT()"), "x"],
  ];
  const { page, calls } = await open({ ...unknown, sheets: [{ name: "Open", rows }] });
  await page.getByRole("button", { name: again }).click();
  await page.getByText("1 formula entered again.").waitFor();
  for (const cell of ["A1", "C1"])
    await page.getByText(`Open!${cell} could not be entered: Google Sheets left the list`).waitFor();
  await page.getByText("Open!B3 could not be entered: Google Sheets left only its last answer").waitFor();
  expect(await calls()).toEqual([["write", "Open!A4", "=FOOT.ABOUT()"]]);
  await page.close();
});

it("tells of a locked sheet's cells up to twenty, and how many more there are", async () => {
  const rows = Array.from({ length: 25 }, () => [typed]);
  const { page } = await open({ ...hiding, sheets: [{ name: "Open", rows, protection: "with password" }] });
  await page.getByRole("button", { name: again }).click();
  await page.getByText("5 more could not be entered.").waitFor();
  expect(await page.getByRole("listitem").filter({ hasText: "could not be entered" }).count()).toBe(21);
  await page.close();
});

it("opens what can be opened though another sheet is locked", async () => {
  const kept = { rows: [[stored]], protection: "without password" } as const;
  const sheets = [
    { name: "A", ...kept },
    { name: "Shut", rows: [[stored]], protection: "with password" as const },
    { name: "B", ...kept },
  ];
  const { page, calls } = await open({ ...unknown, selected: "A!A1", sheets });
  await page.getByRole("button", { name: again }).click();
  await page.getByText("2 formulas entered again.").waitFor();
  await page.getByText("Shut!A1 could not be entered: the sheet is protected with a password").waitFor();
  expect((await calls()).map(([what, where]) => `${what} ${where}`)).toEqual([
    "unprotect A",
    "unprotect B",
    "write A!A1",
    "write B!A1",
    "protect A",
    "protect B",
  ]);
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
  await page.getByText("No FOOT formula shows #NAME?, and none could hide it.").waitFor();
  await page.close();
});
