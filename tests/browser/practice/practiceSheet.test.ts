import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import type { Cell } from "../../../src/cells/cell.ts";
import { engineInNode } from "../../../src/hosts/headless/engineInNode.ts";
import { placeText } from "../../../src/workbook/address.ts";
import { openWorkbook } from "../../../src/workbook/openWorkbook.ts";
import { recalculate } from "../../../src/workbook/recalculate.ts";
import { cellValue, type Workbook } from "../../../src/workbook/workbook.ts";
import { cases as casesTable } from "../../../src/workbooks/tables/cases.ts";
import { columnOf } from "../../workbooks/columnOf.ts";
import { download, enter, goTo, openFile, said, settled, toSheet, type } from "./practicePage.ts";
import { servedPractice } from "./servedPractice.ts";

const minutes = 60_000;

const practice = servedPractice();

function sheetNamed(workbook: Workbook, wanted: string) {
  const sheet = workbook.sheets.find(({ name }) => name === wanted);
  if (!sheet) throw new Error(`there is no sheet ${wanted}`);
  return sheet;
}

/** Every cell that holds something, by its sheet and address. */
const valuesOf = (workbook: Workbook): ReadonlyMap<string, Cell> =>
  new Map(
    workbook.sheets.flatMap(({ name, rows }) =>
      rows.flatMap(({ cells }) =>
        cells.filter(({ value }) => value !== null).map((cell) => [`${name}!${placeText(cell)}`, cell.value] as const),
      ),
    ),
  );

const differing = (one: ReadonlyMap<string, Cell>, other: ReadonlyMap<string, Cell>): readonly string[] =>
  [...new Set([...one.keys(), ...other.keys()])]
    .filter((key) => JSON.stringify(one.get(key)) !== JSON.stringify(other.get(key)))
    .map((key) => `${key}: ${JSON.stringify(one.get(key))} and ${JSON.stringify(other.get(key))}`);

const besideCells =
  /<(conditionalFormatting|dataValidations|sheetProtection|drawing|tableParts|pageSetup)\b.*?<\/\1>/gs;

/** What of a file stands beside the cells: rules and looks of each sheet, and every other part that holds no cells. */
const besides = ({ files, sheets }: Workbook): ReadonlyMap<string, string> =>
  new Map([
    ...sheets.map(({ part, text }) => [part, (text.match(besideCells) ?? []).join("\n")] as const),
    ...files.entries
      .map(({ name }) => name)
      .filter((name) => /^xl\/(charts|drawings|tables|theme)\//.test(name))
      .map((name) => [name, files.text(name)] as const),
  ]);

describe("the practice sheet", () => {
  it(
    "works out what is typed at once, spills, and says why it refuses; it asks nobody but its own server",
    async () => {
      const { page, troubles, abroad } = await practice.open();
      expect(await said(page, "A1")).toContain("Start A1 Flock foot book");
      await page.keyboard.press("ArrowRight");
      await said(page, "B1");
      await page.keyboard.type("=FOOT.FLOCKPREV(4,20)");
      await enter(page);
      await said(page, "B2");
      await page.keyboard.press("ArrowUp");
      expect(await said(page, "B1", /%/)).toBe("Start B1 20.0%=FOOT.FLOCKPREV(4,20)");
      await type(page, "E6", "=FOOT.FLOCKPREV(24,20)");
      await goTo(page, "E6");
      expect(await said(page, "E6", /#VALUE!/)).toContain(
        "#VALUE! lame: 24 is more than the 20 seen; enter the lame sheep among those seen",
      );
      await type(page, "E8", "=FOOT.PREVRANGE(4,20)");
      await goTo(page, "E8");
      expect(await said(page, "E8", /%/)).toContain("Start E8 8.1%");
      await goTo(page, "F8");
      expect(await said(page, "F8", /%/)).toContain("Start F8 41.6%");
      expect(troubles).toEqual([]);
      expect(abroad).toEqual([]);
      await page.close();
    },
    5 * minutes,
  );

  it(
    "a case changed in an opened workbook changes the sheet Today, and the file it gives holds what the command line works out",
    async () => {
      const { page, troubles } = await practice.open();
      const book = openWorkbook(readFileSync("samples/flock-foot-book.xlsx"));
      await openFile(page, "mine.xlsx", readFileSync("samples/flock-foot-book.xlsx"));
      await toSheet(page, "Today");
      await goTo(page, "A9");
      expect(await said(page, "A9")).toBe(`Today A9 ${cellValue(sheetNamed(book, "Today"), 8, 0)}`);
      const cases = sheetNamed(book, "Cases");
      const asOf = Number(cellValue(sheetNamed(book, "Settings"), 4, 1));
      // The last case gets a withdrawal period that reaches beyond the day the book is worked out for.
      const last = cases.rows
        .filter(({ cells }) =>
          cells.some(({ column, value }) => column === casesTable.placeOf("treated") && typeof value === "number"),
        )
        .at(-1);
      if (!last) throw new Error("there is no case");
      expect(Number(cellValue(cases, last.row, casesTable.placeOf("treated")))).toBeLessThanOrEqual(asOf);
      await toSheet(page, "Cases");
      const changedCell = `${columnOf(casesTable, "withdrawalDays")}${last.row + 1}`;
      await type(page, changedCell, "300");
      await goTo(page, changedCell);
      await said(page, changedCell, /300/);
      await settled(page);

      const { workbook: file } = await download(page);
      const again = openWorkbook((await recalculate(file, engineInNode())).bytes);
      expect(differing(valuesOf(file), valuesOf(again))).toEqual([]);
      expect(cellValue(sheetNamed(file, "Cases"), last.row, casesTable.placeOf("withdrawalDays"))).toBe(300);
      expect(differing(besides(book), besides(file))).toEqual([]);

      // What the page shows is what the file holds.
      const before = valuesOf(book);
      const onToday = [...valuesOf(file)].filter(
        ([key, value]) => key.startsWith("Today!") && before.get(key) !== value,
      );
      const [key = "", text] = onToday.find(([, value]) => typeof value === "string" && value !== "") ?? [];
      expect(text).toBeDefined();
      await toSheet(page, "Today");
      const address = key.slice("Today!".length);
      await goTo(page, address);
      expect(await said(page, address)).toContain(String(text));
      expect(troubles).toEqual([]);
      await page.close();
    },
    8 * minutes,
  );

  it(
    "refuses a file that is no workbook, in words, and keeps the one that is open",
    async () => {
      const { page } = await practice.open();
      await page
        .locator("header input[type=file]")
        .setInputFiles({ name: "notes.xlsx", mimeType: "text/plain", buffer: Buffer.from("no workbook") });
      await page
        .getByText(
          "notes.xlsx was not opened. This is a text file, such as a .csv: open it in the spreadsheet and save it as .xlsx.",
        )
        .waitFor();
      await type(page, "E4", "=FOOT.FLOCKPREV(1,20)");
      await goTo(page, "E4");
      expect(await said(page, "E4", /%/)).toContain("5.0%");
      await page.close();
    },
    5 * minutes,
  );

  it(
    "says what it keeps unseen, and what the workbook wants in a cell",
    async () => {
      const { page } = await practice.open();
      await openFile(page, "mine.xlsx", readFileSync("samples/flock-foot-book.xlsx"));
      await page
        .getByText("Kept in the file, not shown here: colours that follow the values, locks on cells")
        .waitFor();
      await toSheet(page, "Cases");
      const foot = `${columnOf(casesTable, "foot")}9`;
      await goTo(page, foot);
      expect(await said(page, foot)).toContain("Choose one of: LF, RF, LH, RH, all.");
      // The list of groups is a name for the filled part of a range.
      const group = `${columnOf(casesTable, "group")}9`;
      await goTo(page, group);
      expect(await said(page, group)).toMatch(/Choose one of: Old ewes, .*Shearlings/);
      await goTo(page, "A9");
      expect(await said(page, "A9")).toContain(
        "Type the day she was seen lame, such as 2026-03-14; not a day to come.",
      );
      await page.close();
    },
    5 * minutes,
  );
});
