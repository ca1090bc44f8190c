import { readFileSync } from "node:fs";
import { join } from "node:path";
import type { Browser } from "playwright-core";
import { afterAll, beforeAll, expect, inject, it } from "vitest";
import { templateList } from "../../../src/pages/templateList.ts";
import { launch } from "../launch.ts";
import { type Meeting, openPane } from "../openPane.ts";
import { flock } from "./flock.ts";

let browser: Browser;
beforeAll(async () => {
  browser = await launch();
});
afterAll(() => browser?.close());

const open = (meeting: Meeting) => openPane(browser, inject("addInFolder"), { ...meeting, hash: "#workbooks" });
const bytesOf = (file: string) => readFileSync(join(inject("addInFolder"), "templates", file)).toString("base64");

it.each(templateList.map(({ title, file }) => [title, file] as const))(
  "opens a new workbook: %s",
  async (title, file) => {
    const { page, calls, troubles } = await open({ vendor: flock });
    await page.getByRole("button", { name: `New workbook: ${title}`, exact: true }).click();
    await page.getByText(`${title} is open in a new window.`).waitFor();
    expect(await calls()).toEqual([["create workbook", bytesOf(file)]]);
    expect(troubles).toEqual([]);
    await page.close();
  },
);

it("inserts the sheets of a template after those that are there, and names them", async () => {
  const [{ title, file }] = templateList as [(typeof templateList)[number]];
  const { page, calls, troubles } = await open({ vendor: flock });
  await page.getByRole("button", { name: `Insert these sheets here: ${title}`, exact: true }).click();
  await page.getByText("Added at the end of this workbook: Start, Gathers.").waitFor();
  expect(await calls()).toEqual([["insert", bytesOf(file), { positionType: "End" }]]);
  expect(troubles).toEqual([]);
  await page.close();
});

it("in an older Excel offers what works there, and says what does not", async () => {
  const { page } = await open({ vendor: { ...flock, sets: ["ExcelApi 1.8"] } });
  await page.getByText("too old to put sheets in from here").waitFor();
  expect(await page.getByRole("button", { name: /^New workbook/ }).count()).toBe(templateList.length);
  expect(await page.getByRole("button", { name: /^Insert/ }).count()).toBe(0);
  await page.close();
  const older = await open({ vendor: { ...flock, sets: [] } });
  await older.page.getByText("too old to open a workbook from here").waitFor();
  expect(await older.page.getByRole("button").count()).toBe(0);
  await older.page.close();
});

it("says in words that a file could not be fetched", async () => {
  const { page } = await open({ vendor: flock });
  await page.route("**/templates/*", (route) => route.fulfill({ status: 404 }));
  await page
    .getByRole("button", { name: /^New workbook/ })
    .first()
    .click();
  await page.getByText("could not be fetched (404); check the connection and press again.").waitFor();
  await page.close();
});

it("in a browser hands the files over to keep", async () => {
  const { page } = await open({});
  for (const { title, file } of templateList) {
    const download = page.waitForEvent("download");
    await page.getByRole("link", { name: `Download: ${title}`, exact: true }).click();
    expect((await download).suggestedFilename()).toBe(file);
  }
  await page.close();
});
