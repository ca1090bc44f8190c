import type { Page } from "playwright-core";
import { expect, it } from "vitest";
import { openWorkbook } from "../../../src/workbook/openWorkbook.ts";
import type { Workbook } from "../../../src/workbook/workbook.ts";
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
    expect(await page.locator("header input[type=file]").inputValue()).toBe("");
    await goTo(page, "A1");
    expect(await said(page, "A1")).toBe("Flock A1 7");
    const { name, workbook } = await download(page);
    expect(name).toBe("mine.xlsm");
    expect(workbook.sheets[0]?.rows[0]?.cells[0]?.value).toBe(7);
    await page.close();
  },
  5 * minutes,
);

/** Stands in for the browser's own boxes: files of the page's own store, which are written as those of a disk are. */
const withDisk = (page: Page): Promise<unknown> =>
  page.addInitScript(() => {
    const named = async (name: string, create: boolean) =>
      (await navigator.storage.getDirectory()).getFileHandle(name, { create });
    Object.assign(globalThis, {
      keepPickers: true,
      showOpenFilePicker: async () => [await named("mine.xlsx", false)],
      showSaveFilePicker: async ({ suggestedName }: { suggestedName: string }) =>
        named(`chosen-${suggestedName}`, true),
    });
  });

const putOnDisk = (page: Page, name: string, bytes: Uint8Array): Promise<void> =>
  page.evaluate(
    async ([file, content]) => {
      const handle = await (await navigator.storage.getDirectory()).getFileHandle(file, { create: true });
      const writing = await handle.createWritable();
      await writing.write(Uint8Array.from(content));
      await writing.close();
    },
    [name, [...bytes]] as const,
  );

const onDisk = async (page: Page, name: string) =>
  openWorkbook(
    Uint8Array.from(
      await page.evaluate(async (file) => {
        const handle = await (await navigator.storage.getDirectory()).getFileHandle(file);
        return [...new Uint8Array(await (await handle.getFile()).arrayBuffer())];
      }, name),
    ),
  );

const firstCell = (workbook: Workbook) => workbook.sheets[0]?.rows[0]?.cells[0]?.value;
const saveButton = (page: Page) => page.getByRole("button", { name: "Save", exact: true });

it(
  "where the browser may write files a workbook is saved into the one it came from, and a new one where the person chooses",
  async () => {
    const { page, troubles } = await practice.open({ before: withDisk });
    await saveButton(page).click();
    await page.getByText("Saved in chosen-flock-foot-book.xlsx.").waitFor();
    expect((await onDisk(page, "chosen-flock-foot-book.xlsx")).sheets.map(({ name }) => name)).toContain("May they go");

    await putOnDisk(page, "mine.xlsx", small());
    await page.getByRole("button", { name: "Open a workbook" }).click();
    await page.getByText("mine.xlsx is open.").waitFor();
    await settled(page);
    await type(page, "A1", "7");
    await page.getByText("not saved yet").waitFor();
    // What is being typed goes along.
    await goTo(page, "A1");
    await page.keyboard.type("8");
    await page.keyboard.press("Control+s");
    await page.getByText("Saved in mine.xlsx.").waitFor();
    expect(firstCell(await onDisk(page, "mine.xlsx"))).toBe(8);
    await page.getByText("not saved yet").waitFor({ state: "detached" });
    await type(page, "A1", "9");
    await saveButton(page).click();
    await page.getByText("not saved yet").waitFor({ state: "detached" });
    expect(firstCell(await onDisk(page, "mine.xlsx"))).toBe(9);

    await putOnDisk(page, "mine.xlsx", small());
    await type(page, "A1", "10");
    await saveButton(page).click();
    await page.getByText("mine.xlsx was changed by another program").waitFor();
    await page.getByRole("button", { name: "Go back" }).click();
    await page.getByText("Nothing was saved.").waitFor();
    expect(firstCell(await onDisk(page, "mine.xlsx"))).toBe(4);
    await saveButton(page).click();
    await page.getByRole("button", { name: "Write over it" }).click();
    await page.getByText("Saved in mine.xlsx.").waitFor();
    expect(firstCell(await onDisk(page, "mine.xlsx"))).toBe(10);
    expect(troubles).toEqual([]);
    await page.close();
  },
  5 * minutes,
);

it(
  "asks before work that is in no file gives its place to another workbook, or to another page",
  async () => {
    const { page } = await practice.open();
    const leave = async (): Promise<string> => {
      const asked = page.waitForEvent("dialog");
      // A page that is not left answers no navigation.
      await page.evaluate(() => setTimeout(() => location.reload()));
      const dialog = await asked;
      await dialog.dismiss();
      return dialog.type();
    };
    await type(page, "E4", "7");
    expect(await leave()).toBe("beforeunload");
    await pick(page, "mine.xlsx", small());
    await page.getByText("What you typed into flock-foot-book.xlsx is not saved.").waitFor();
    await page.keyboard.press("Escape");
    await goTo(page, "E4");
    expect(await said(page, "E4")).toBe("Start E4 7");

    await page.getByRole("button", { name: "Workbooks" }).click();
    await page.getByRole("button", { name: "Start: Visit sheet" }).click();
    const saved = page.waitForEvent("download");
    await page.getByRole("button", { name: "Save it" }).click();
    expect((await saved).suggestedFilename()).toBe("flock-foot-book.xlsx");
    await page.getByText("visit-sheet.xlsx is open.").waitFor();
    await settled(page);

    await type(page, "E4", "7");
    await pick(page, "mine.xlsx", small());
    await page.getByRole("button", { name: "Close without saving" }).click();
    await page.getByText("mine.xlsx is open.").waitFor();
    await settled(page);
    // Nothing was typed since, so nobody is asked.
    await openFile(page, "other.xlsx", small());
    await page.reload();
    await page.getByText("flock-foot-book.xlsx is open.").waitFor();
    await page.close();
  },
  5 * minutes,
);
