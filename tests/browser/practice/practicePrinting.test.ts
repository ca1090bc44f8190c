import { expect, it } from "vitest";
import { buildWorkbook, rowsOf } from "../../workbook/buildWorkbook.ts";
import { openFile, said } from "./practicePage.ts";
import { servedPractice } from "./servedPractice.ts";

const minutes = 60_000;
const practice = servedPractice();

it(
  "prints the sheet in view and not the page: its cells as shown, its headings on each page, and nothing of it afterwards",
  async () => {
    const { page, troubles } = await practice.open();
    const animals = Object.fromEntries(
      Array.from({ length: 200 }, (_, row) => [
        [`A${row + 2}`, `Ewe ${row + 1}`],
        [`B${row + 2}`, row],
      ]).flat() as [string, string | number][],
    );
    const headings =
      '<sheetViews><sheetView workbookViewId="0"><pane ySplit="1" topLeftCell="A2" state="frozen"/></sheetView></sheetViews>';
    const rows = rowsOf({ A1: "Animal", B1: "Days", C2: "=FOOT.FLOCKPREV(6,300)", ...animals });
    await openFile(page, "long.xlsx", buildWorkbook({ sheets: [{ name: "Flock", rows, before: headings }] }));
    await page.keyboard.press("ArrowDown");
    await said(page, "A2");
    const paper = await page.evaluate(() => {
      dispatchEvent(new Event("beforeprint"));
      const found = document.querySelector(".paper");
      const texts = (selector: string) =>
        [...(found?.querySelectorAll(selector) ?? [])].map((cell) => cell.textContent);
      return { caption: texts("caption"), head: texts("thead td"), last: texts("tbody tr:last-child td") };
    });
    expect(paper).toEqual({
      caption: ["long.xlsx, Flock"],
      head: ["Animal", "Days", ""],
      last: ["Ewe 200", "199", ""],
    });
    await page.emulateMedia({ media: "print" });
    expect(await page.locator("#page").isVisible()).toBe(false);
    expect(await page.locator(".paper").isVisible()).toBe(true);
    await page.evaluate(() => dispatchEvent(new Event("afterprint")));
    await page.emulateMedia({ media: "screen" });
    expect(await page.locator(".paper").count()).toBe(0);
    // The browser itself tells of the printing: 201 rows take more pages than the page on the screen would.
    const pdf = (await page.pdf({ preferCSSPageSize: true })).toString("latin1");
    const pages = pdf.match(/\/Type\s*\/Page\b/g) ?? [];
    expect(pages.length).toBeGreaterThanOrEqual(3);
    expect(await page.locator(".paper").count()).toBe(0);
    expect(troubles).toEqual([]);
    await page.close();
  },
  5 * minutes,
);

it(
  "a long text runs on over the blank cells beside it and no further, so that it lies over no other on paper",
  async () => {
    const { page } = await practice.open();
    const sentence =
      "withdrawal_days, row 342: a treatment without withdrawal days; enter the days from its data sheet";
    const rows = rowsOf({ A1: sentence, C1: "ZZ 0123456 00212", A2: "short", C2: "a" });
    await openFile(page, "doubt.xlsx", buildWorkbook({ sheets: [{ name: "Flock", rows }] }));
    await page.emulateMedia({ media: "print" });
    const printed = await page.evaluate(() => {
      dispatchEvent(new Event("beforeprint"));
      const cells = [...document.querySelectorAll<HTMLTableCellElement>(".paper tbody td")];
      return cells.map((cell) => [cell.textContent, cell.colSpan, getComputedStyle(cell).whiteSpace]);
    });
    expect(printed).toEqual([
      [sentence, 2, "pre-line"],
      ["ZZ 0123456 00212", 1, "pre-line"],
      ["short", 1, "pre-line"],
      ["", 1, "pre-line"],
      ["a", 1, "pre-line"],
    ]);
    await page.close();
  },
  5 * minutes,
);
