import type { Browser } from "playwright-core";
import { afterAll, beforeAll, expect, inject, it } from "vitest";
import type { StandInBook } from "../excelStandIn.ts";
import { launch } from "../launch.ts";
import { openPane } from "../openPane.ts";
import { flock } from "./flock.ts";

let browser: Browser;
beforeAll(async () => {
  browser = await launch();
});
afterAll(() => browser?.close());

async function check(vendor: StandInBook) {
  const pane = await openPane(browser, inject("addInFolder"), { vendor, hash: "#records" });
  await pane.page.getByRole("button", { name: "Check the selected records" }).click();
  return pane;
}

it("checks the whole table around the selected cell, and leads to each cell", async () => {
  const { page, troubles, calls } = await check({ ...flock, selected: "My cases!C5" });
  await page.getByText("Looked at 4 records in 'My cases'!B3:F7.").waitFor();
  const found = await page.locator(".findings li").allInnerTexts();
  expect(found.map((text) => text.split("\n").filter((line) => line !== ""))).toEqual([
    ["C5", 'Date treated: "12/3" is not a date', "enter a real date, or text such as 2026-03-14"],
    [
      "D5",
      'Lesion: "limping" is not a lesion known here',
      "use the usual name of a lesion, such as scald or footrot, or other",
    ],
    ["B6", "Ear tag: no tag in a row that holds a record", "enter the tag of the animal"],
    ["F6", expect.stringContaining("#N/A"), expect.any(String)],
    ["B7", "Ear tag: the same record as row 4", "delete one of the two if it was entered twice"],
  ]);
  await page.getByRole("button", { name: "Go to My cases, D5" }).click();
  await expect.poll(calls).toContainEqual(["select", "My cases!D5"]);
  expect(await calls()).not.toContainEqual(expect.arrayContaining(["write"]));
  expect(troubles).toEqual([]);
  await page.close();
});

it("says with its findings what no check can know", async () => {
  const { page } = await check(flock);
  await page.locator(".caution").getByText("it cannot tell whether a record is true or complete").waitFor();
  await page.close();
});

it("takes the totals of a table for no record", async () => {
  const rows = [
    ["Tag", "Date treated"],
    ["041", 46063],
    ["042", 46063],
    ["Total", 2],
  ];
  const sheets = [{ name: "Flock", rows, tables: ["A1:B4"], totals: ["A1:B4"] }];
  const { page } = await check({ ...flock, sheets, selected: "Flock!A2" });
  await page.getByText("Looked at 2 records in Flock!A1:B3. Nothing was found wrong.").waitFor();
  await page.close();
});

it("checks the block around a lone cell where there is no table", async () => {
  const { page } = await check(flock);
  await page.getByText("Looked at 2 records in Gathers!A1:D3.").waitFor();
  await page.getByText("What the headings were taken for").click();
  await page.getByText("Date: treated").waitFor();
  await page.getByText("Note: not checked, the heading is not known").waitFor();
  await page.close();
});

it("checks the selected cells that are in use, headings and rows, from a 1904 workbook too", async () => {
  const rows = [
    ["Tag", "Date treated"],
    ["041", 46063 - 1462],
    ["042", 46063 - 1462],
  ];
  const sheets = [{ name: "Old", rows }];
  const { page } = await check({ ...flock, sheets, selected: "Old!A1:B9", dateSystem: 1904 });
  await page.getByText("Looked at 2 records in Old!A1:B3. Nothing was found wrong.").waitFor();
  await page.close();
});

it.each([
  ["one row", "Gathers!A1:D1", "has no rows under its headings"],
  ["no heading that is known", "Gathers!B2:C3", "none of 6, 100 is known"],
])("says in words why it cannot check %s", async (_, selected, why) => {
  const { page } = await check({ ...flock, selected });
  await page.getByRole("alert").getByText(why).waitFor();
  await page.close();
});

it("reads long records in parts and leaves out no finding", async () => {
  const rows = [
    ["Tag", "Date treated", "Withdrawal days"],
    ...Array.from({ length: 9_000 }, (_, row) => [`${row}`, "12/3", 28]),
  ];
  const { page } = await check({ ...flock, sheets: [{ name: "Long", rows }], selected: "Long!A1" });
  await page.getByText("9000 things to look at:").waitFor();
  expect(await page.locator(".findings li").count()).toBe(100);
  await page.getByRole("button", { name: "Show 100 more" }).click();
  await expect.poll(() => page.locator(".findings li").count()).toBe(200);
  expect(await page.locator(".findings .link").last().textContent()).toBe("B201");
  await page.close();
});
