import { expect, it } from "vitest";
import { dayOf } from "../../../src/cells/day.ts";
import { buildWorkbook, rowsOf } from "../../workbook/buildWorkbook.ts";
import { enter, goTo, openFile, said } from "./practicePage.ts";
import { servedPractice } from "./servedPractice.ts";

const minutes = 60_000;
const practice = servedPractice();
const main = "http://schemas.openxmlformats.org/spreadsheetml/2006/main";
const withDays = `<styleSheet xmlns="${main}"><numFmts count="1"><numFmt numFmtId="164" formatCode="d mmm yyyy"/></numFmts><fonts count="1"><font/></fonts><fills count="1"><fill/></fills><borders count="1"><border/></borders><cellStyleXfs count="1"><xf/></cellStyleXfs><cellXfs count="2"><xf numFmtId="0" fontId="0" xfId="0"/><xf numFmtId="164" fontId="0" xfId="0" applyNumberFormat="1"/></cellXfs></styleSheet>`;

// What the embedded spreadsheet does of itself, and is kept from: see the list in DEVELOPERS.md.

it(
  "a number or a date that is wider than its cell is drawn as ####, never cut off",
  async () => {
    const { page } = await practice.open({
      before: (fresh) =>
        fresh.addInitScript(() => {
          const drawn: string[] = [];
          Object.assign(globalThis, { drawn });
          const { fillText } = CanvasRenderingContext2D.prototype;
          CanvasRenderingContext2D.prototype.fillText = function (text, ...at) {
            drawn.push(text);
            fillText.call(this, text, ...at);
          };
        }),
    });
    const day = dayOf("2026-04-12");
    const rows = `<row r="1"><c r="A1" s="1"><v>${day}</v></c><c r="B1" s="1"><v>${day + 1}</v></c></row>`;
    const widths =
      '<cols><col min="1" max="1" width="6" customWidth="1"/><col min="2" max="2" width="20" customWidth="1"/></cols>';
    await openFile(
      page,
      "narrow.xlsx",
      buildWorkbook({ sheets: [{ name: "Flock", rows, before: widths }], styles: withDays }),
    );
    const drawn = async () => new Set(((await page.evaluate("drawn.join('\\n')")) as string).split("\n"));
    await expect.poll(async () => (await drawn()).has("13 Apr 2026")).toBe(true);
    const texts = [...(await drawn())];
    expect(texts.filter((text) => /^#+$/.test(text))).toHaveLength(1);
    expect(texts.filter((text) => text.startsWith("12 A"))).toEqual([]);
    await page.close();
  },
  5 * minutes,
);

it(
  "what is being typed stays when the answer of its cell arrives",
  async () => {
    const { page } = await practice.open();
    const count = 3000;
    const formulas = Object.fromEntries(
      Array.from({ length: count }, (_, row) => [`D${row + 2}`, "=SUM(D$1,A$1:A$9)"] as const),
    );
    await openFile(
      page,
      "long.xlsx",
      buildWorkbook({ sheets: [{ name: "Flock", rows: rowsOf({ A1: 1, D1: 2, ...formulas }) }] }),
    );
    await goTo(page, "D1");
    await page.keyboard.type("70");
    await enter(page);
    await page.keyboard.type("mi", { delay: 20 });
    // The last of the formulas that are worked out meanwhile.
    await expect.poll(async () => page.locator("main").getAttribute("aria-busy"), { timeout: minutes }).toBe("false");
    await page.keyboard.type("ne");
    await enter(page);
    await said(page, "D3", /71/);
    await goTo(page, "D2");
    expect(await said(page, "D2")).toContain("D2 mine");
    await page.close();
  },
  5 * minutes,
);

it(
  "of a refused cell the function's own sentence is said, and nothing else",
  async () => {
    const { page } = await practice.open();
    const rows = rowsOf({ A1: "=FOOT.FLOCKPREV(24,20)" });
    await openFile(page, "refused.xlsx", buildWorkbook({ sheets: [{ name: "Flock", rows }] }));
    await goTo(page, "A1");
    await said(page, "A1", /24 is more than the 20 seen/);
    const sheet = await page.evaluate(() => {
      const boxes = [...document.querySelectorAll("canvas")].map((canvas) => canvas.getBoundingClientRect());
      const largest = boxes.sort((one, other) => other.width * other.height - one.width * one.height)[0];
      return { x: largest?.x ?? 0, y: largest?.y ?? 0 };
    });
    // From D4 into A1, beyond the headings of rows and columns.
    await page.mouse.move(sheet.x + 300, sheet.y + 90);
    await page.mouse.move(sheet.x + 80, sheet.y + 30, { steps: 8 });
    await page.locator(".sentence").filter({ hasText: "24 is more" }).waitFor();
    // The spreadsheet's own comes a tenth of a second later.
    await page.waitForTimeout(1500);
    expect(await page.getByText("Error in value").count()).toBe(0);
    await page.close();
  },
  5 * minutes,
);
