import { expect, it } from "vitest";
import { buildWorkbook, rowsOf } from "../../workbook/buildWorkbook.ts";
import { download, goTo, openFile, pick, said, settled, type } from "./practicePage.ts";
import { servedPractice } from "./servedPractice.ts";

const minutes = 60_000;

const practice = servedPractice();

const small = (given: { date1904?: boolean; styles?: string } = {}) =>
  buildWorkbook({ sheets: [{ name: "Flock", rows: rowsOf({ A1: 4, B1: 20 }) }], ...given });

it(
  "the flock foot book that comes late takes no place of a workbook opened meanwhile",
  async () => {
    let come = (): void => {};
    const late = new Promise<void>((resolve) => {
      come = resolve;
    });
    const { page, troubles } = await practice.start({
      before: (page) =>
        page.route("**/flock-foot-book.xlsx", async (route) => {
          await late;
          await route.continue();
        }),
    });
    await openFile(page, "mine.xlsx", small());
    await type(page, "A1", "7");
    const arrived = page.waitForResponse("**/flock-foot-book.xlsx").then((response) => response.finished());
    come();
    await arrived;
    await settled(page);
    await page.getByText("mine.xlsx is open.").waitFor();
    await goTo(page, "A1");
    expect(await said(page, "A1")).toBe("Flock A1 7");
    expect(troubles).toEqual([]);
    await page.close();
  },
  5 * minutes,
);

it(
  "a workbook that cannot be shown or read leaves the open one in its place, in words; one with macros keeps its kind",
  async () => {
    const { page } = await practice.open();
    await openFile(page, "mine.xlsm", small());
    await type(page, "A1", "7");
    await pick(page, "old.xlsx", small({ date1904: true }));
    await page.getByText("old.xlsx was not opened. It counts days from 1904").waitFor();
    await pick(page, "odd.xlsx", small({ styles: "<styleSheet><cellXfs></styleSheet>" }));
    await page.getByText("odd.xlsx was not opened.").waitFor();
    await page.evaluate(() => {
      File.prototype.arrayBuffer = () => Promise.reject(new Error("gone"));
    });
    for (let time = 0; time < 2; time += 1) {
      await pick(page, "gone.xlsx", small());
      await page.getByText("gone.xlsx was not opened. The browser could not read it").waitFor();
    }
    expect(await page.locator("input[type=file]").inputValue()).toBe("");
    await goTo(page, "A1");
    expect(await said(page, "A1")).toBe("Flock A1 7");
    const { name, workbook } = await download(page);
    expect(name).toBe("mine-practice.xlsm");
    expect(workbook.sheets[0]?.rows[0]?.cells[0]?.value).toBe(7);
    await page.close();
  },
  5 * minutes,
);
