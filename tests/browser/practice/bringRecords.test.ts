import { readFileSync } from "node:fs";
import { expect, it } from "vitest";
import { sheetNames } from "../../../src/workbooks/footBook/bookSheets.ts";
import { placedCases } from "../../../src/workbooks/footBook/placedRecords.ts";
import { cases } from "../../../src/workbooks/tables/cases.ts";
import { columnOf } from "../../workbooks/columnOf.ts";
import { barriers } from "../barriers.ts";
import { download, goTo, said, settled, toSheet } from "./practicePage.ts";
import { servedPractice } from "./servedPractice.ts";

const minutes = 60_000;
const practice = servedPractice();

// A shepherd's own list, invented: other words in the headings, dates as text, and one row that is no record.
const ownList = `Ohr;Behandelt am;Wartezeit;Befund;Bemerkung
999000000000201;03/10/2026;28;footrot;
999000000000202;05/10/2026;0;scald;back foot
;;;;only a remark
`;

it(
  "brings a list with headings of its own into a new book, asks what they mean, and names what was left",
  async () => {
    const { page, abroad, troubles } = await practice.open({ stillness: "reduce" });
    await page.getByRole("button", { name: "Workbooks", exact: true }).click();
    await page.getByRole("button", { name: "Bring them into a new book" }).click();
    await page.getByText("Choose the files first.").waitFor();
    await page
      .getByLabel("Files with records")
      .setInputFiles({ name: "list.csv", mimeType: "text/csv", buffer: Buffer.from(ownList) });
    await page.getByRole("button", { name: "Bring them into a new book" }).click();
    await page.getByText("No records were found in list.csv").waitFor();
    expect(await barriers(page)).toEqual([]);

    await page.getByLabel("Ohr", { exact: true }).selectOption("Tag");
    await page.getByLabel("Behandelt am").selectOption("Treated");
    await page.getByLabel("Wartezeit").selectOption("Withdrawal days");
    await page.getByLabel("Befund").selectOption("Lesion");
    await page.getByLabel("Dates such as 03/04/2026").selectOption("dmy");
    await page.getByLabel("Farm", { exact: true }).fill("Invented hill farm");
    await page.getByRole("button", { name: "Bring them again" }).click();
    await page.getByText("foot-book.xlsx is open.").waitFor();
    await settled(page);
    await page.getByText("2 of 3 rows brought.").waitFor();
    await page.getByText("list.csv, row 4").waitFor();
    await page.getByText("not saved yet").waitFor();
    expect(await barriers(page)).toEqual([]);

    const first = placedCases.rows.top + 1;
    await toSheet(page, sheetNames.cases);
    const treated = `${columnOf(cases, "treated")}${first}`;
    await goTo(page, treated);
    expect(await said(page, treated)).toContain("2026");
    const { name, workbook } = await download(page);
    expect(name).toBe("foot-book.xlsx");
    const saved = workbook.sheets.find((sheet) => sheet.name === sheetNames.cases);
    const row = saved?.rows.find((found) => found.row === placedCases.rows.top);
    expect(row?.cells.find(({ column }) => column === placedCases.column("tag").left)?.value).toBe("999000000000201");
    // 2026-10-03, by the calendar.
    expect(row?.cells.find(({ column }) => column === placedCases.column("treated").left)?.value).toBe(46_298);
    expect(abroad).toEqual([]);
    expect(troubles).toEqual([]);
    await page.close();
  },
  5 * minutes,
);

it(
  "brings an older foot book whole, and begins a new year with what is open",
  async () => {
    const { page } = await practice.open();
    await page.getByRole("button", { name: "Workbooks", exact: true }).click();
    await page.getByLabel("Files with records").setInputFiles({
      name: "old.xlsx",
      mimeType: "",
      buffer: readFileSync("samples/flock-foot-book.xlsx"),
    });
    await page.getByRole("button", { name: "Bring them into a new book" }).click();
    await page.getByText("foot-book.xlsx is open.").waitFor();
    await settled(page);
    const total = page.getByText(/^\d+ of \d+ rows brought\.$/);
    const [, brought, there] = /^(\d+) of (\d+)/.exec((await total.textContent()) ?? "") ?? [];
    expect(brought).toBe(there);

    await page.getByLabel("Begin a new year on").fill("2026-11-01");
    await page.getByRole("button", { name: "Bring them into a new book" }).click();
    await page.getByText("What you typed into foot-book.xlsx is not saved.").waitFor();
    await page.getByRole("button", { name: "Close without saving" }).click();
    await page.getByText("of animals with nothing open on that day").first().waitFor();
    const open = Number(/^(\d+) of/.exec((await total.textContent()) ?? "")?.[1]);
    expect(open).toBeGreaterThan(0);
    expect(open).toBeLessThan(Number(there));
    await page.close();
  },
  5 * minutes,
);
