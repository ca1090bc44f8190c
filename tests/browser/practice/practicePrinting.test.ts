import { expect, it } from "vitest";
import { buildWorkbook, rowsOf } from "../../workbook/buildWorkbook.ts";
import { openFile, said, toSheet } from "./practicePage.ts";
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

it(
  "prints the charts of a sheet with it, whole and sharp, light also where the page is dark",
  async () => {
    const { page, troubles } = await practice.open({ look: "dark" });
    await toSheet(page, "Picture");
    const printed = await page.evaluate(() => {
      dispatchEvent(new Event("beforeprint"));
      const charts = [...document.querySelectorAll<HTMLElement>(".paper figure.chart")];
      const zoomOf = (chart: Element) => Number(chart.closest("table")?.style.zoom);
      return charts.map((chart) => ({
        title: chart.querySelector("figcaption")?.textContent,
        ground: getComputedStyle(chart).getPropertyValue("--sheet").trim(),
        isTogether: chart.closest("tbody")?.classList.contains("whole"),
        // In points, with the sheet made smaller around them (3/4 of a point to a pixel, CSS Values 4 §6.2).
        letters: [...chart.querySelectorAll("figcaption, li")].map(
          (text) => Number.parseFloat(getComputedStyle(text).fontSize) * zoomOf(chart) * 0.75,
        ),
        axes: 9 * Number(chart.style.getPropertyValue("--letters")) * zoomOf(chart),
        finer: (chart.querySelector("canvas")?.width ?? 0) / Number.parseFloat(chart.style.width),
      }));
    });
    expect(printed.map(({ title }) => title)).toEqual([
      "Share lame by month",
      "New cases by month",
      "What made them lame",
      "Still lame, days after treatment",
    ]);
    for (const { ground, isTogether, letters, axes, finer } of printed) {
      for (const size of [...letters, axes]) expect(size).toBeGreaterThanOrEqual(8 - 0.01);
      expect([ground, isTogether]).toEqual(["#ffffff", true]);
      expect(finer).toBeGreaterThan(2.5);
    }
    expect(troubles).toEqual([]);
    await page.close();
  },
  5 * minutes,
);

it(
  "a wide sheet goes over several pages, with its headings and first columns on each, and no letter below 8 points",
  async () => {
    const { page } = await practice.open();
    await toSheet(page, "Cases");
    const tables = await page.evaluate(() => {
      dispatchEvent(new Event("beforeprint"));
      document.querySelector(".paper")?.classList.add("measured");
      return [...document.querySelectorAll<HTMLTableElement>(".paper section table:last-child")].map((table) => {
        const caption = table.closest("section")?.querySelector("caption")?.textContent;
        const zoom = Number(table.style.zoom);
        const heads = [...(table.tHead?.rows ?? [])].map((row) => [...row.cells].map((cell) => cell.textContent));
        const sizes = [...table.querySelectorAll("td, caption")].map((cell) =>
          Number.parseFloat(getComputedStyle(cell).fontSize),
        );
        return {
          caption,
          heads: heads.at(-1)?.slice(0, 3),
          smallest: Math.min(...sizes),
          zoom,
          // Headings that take more than a quarter of a page are not repeated by the browser.
          headHeight: table.tHead?.getBoundingClientRect().height,
          wide: table.getBoundingClientRect().width,
        };
      });
    });
    expect(tables.length).toBeGreaterThan(1);
    for (const [index, { caption, heads, smallest, zoom, headHeight, wide }] of tables.entries()) {
      expect(caption).toBe(`flock-foot-book.xlsx, Cases (columns, part ${index + 1} of ${tables.length})`);
      expect(heads).toEqual(["Seen lame", "Treated", "Tag"]);
      // In pixels of the table before it is made smaller; 3/4 of a point each (CSS Values 4 §6.2).
      expect(smallest * zoom * 0.75).toBeGreaterThanOrEqual(8 - 0.01);
      expect(headHeight).toBeLessThan(717 / 4);
      expect(wide).toBeLessThanOrEqual(1047);
    }
    await page.close();
  },
  5 * minutes,
);

it(
  "a form is printed with its boxes, on the one page its file gives it",
  async () => {
    const { page } = await practice.open();
    await toSheet(page, "Gather form");
    await page.evaluate(() => dispatchEvent(new Event("beforeprint")));
    const boxes = page.locator(".paper tbody td[style*='border']");
    expect(await boxes.count()).toBeGreaterThan(50);
    // As the browser has understood them; the foot of its file names file, sheet and page.
    const rules = await page.evaluate(() => {
      const sheet = document.querySelector<HTMLStyleElement>(".paper style")?.sheet;
      return [...(sheet?.cssRules ?? [])].map(({ cssText }) => cssText).join("\n");
    });
    expect(rules).toContain('@bottom-left { content: "flock-foot-book.xlsx" ", " "Gather form"');
    expect(rules).toContain('@bottom-right { content: "Page " counter(page) " of " counter(pages)');
    await page.evaluate(() => dispatchEvent(new Event("afterprint")));
    const pdf = (await page.pdf({ preferCSSPageSize: true })).toString("latin1");
    expect(pdf.match(/\/Type\s*\/Page\b/g)?.length).toBe(1);
    await page.close();
  },
  5 * minutes,
);
