import type { Page } from "playwright-core";
import { describe, expect, it } from "vitest";
import { dayOf } from "../../../src/cells/day.ts";
import { placeText, readPlace } from "../../../src/workbook/address.ts";
import type { Workbook } from "../../../src/workbook/workbook.ts";
import { buildWorkbook, rowsOf } from "../../workbook/buildWorkbook.ts";
import { download, goTo, openFile, paste, said, settled, toSheet, type } from "./practicePage.ts";
import { servedPractice } from "./servedPractice.ts";

const minutes = 60_000;

const practice = servedPractice();

const main = "http://schemas.openxmlformats.org/spreadsheetml/2006/main";
const gathers = `<table xmlns="${main}" id="1" name="Gathers" displayName="Gathers" ref="A1:B4"><autoFilter ref="A1:B4"/><tableColumns count="2"><tableColumn id="1" name="Lame"/><tableColumn id="2" name="Looked at"/></tableColumns></table>`;
const cells = { A1: "Lame", B1: "Looked at", A2: 1, B2: 10, A3: 2, B3: 20, A4: 3, B4: 30 };
const shownAsInBritain = `<styleSheet xmlns="${main}"><numFmts count="1"><numFmt numFmtId="164" formatCode="dd/mm/yyyy"/></numFmts><fonts count="1"><font/></fonts><fills count="1"><fill/></fills><borders count="1"><border/></borders><cellStyleXfs count="1"><xf/></cellStyleXfs><cellXfs count="2"><xf numFmtId="0" fontId="0" xfId="0"/><xf numFmtId="164" fontId="0" xfId="0" applyNumberFormat="1"/></cellXfs></styleSheet>`;

/** A page with a small workbook: the table Gathers, and what is given in rows below it. */
async function openSmall(below = "", styles?: string) {
  const opened = await practice.open();
  const sheet = { name: "Flock", rows: rowsOf(cells) + below, tables: [gathers] };
  await openFile(
    opened.page,
    "mine.xlsx",
    buildWorkbook({ sheets: [sheet], ...(styles === undefined ? {} : { styles }) }),
  );
  return opened;
}

function cellOf({ sheets }: Workbook, address: string) {
  const place = readPlace(address);
  return sheets[0]?.rows.find(({ row }) => row === place?.row)?.cells.find(({ column }) => column === place?.column);
}

const shownAt = async (page: Page, cell: string): Promise<string> => {
  await goTo(page, cell);
  return said(page, cell);
};

/** Dates as people type them, with the day where there is only one that they can mean. */
const messy: readonly (readonly [text: string, day?: string])[] = [
  ["03/04/2026"],
  ["2026-03-14", "2026-03-14"],
  ["3.4.26"],
  ["14/03/2026"],
  ["3 Apr 2026", "2026-04-03"],
  ["3-4-2026"],
  ["3 Apr"],
  ["14.3.2026"],
  ["May 12"],
  ["3rd April"],
  ["Apr 3, 2026", "2026-04-03"],
  ["12/4"],
  ["5 . 6 . 2026"],
  ["12 Apr '26"],
  ["14.03.26"],
  ["14-3-26"],
  ["3.4."],
  ["14 03 2026"],
  ["14,3,2026"],
  ["14\\3\\26"],
  ["14–03–2026"],
  ["14—03—2026"],
  ["14·3·2026"],
  ["14 / 3 / 2026"],
  ["14th of March 2026"],
  ["14. Mar. 2026", "2026-03-14"],
  ["Mar-26"],
  ["Fri 14 March"],
  ["14/03/2026 10:30"],
];

const isText = "This is text, not a date";

describe("dates in the practice sheet", () => {
  it(
    "of 200 rows pasted with messy dates every doubtful one stays the text it was, and is told and marked; no other is",
    async () => {
      const { page, troubles } = await openSmall();
      const rows = Array.from({ length: 200 }, (_, row) => messy[row % messy.length] ?? ([""] as const));
      await goTo(page, "D10");
      await page.keyboard.press("ArrowDown");
      await paste(page, "text/plain", rows.map(([text]) => text).join("\r\n"));
      const doubtful = rows.filter(([, day]) => day === undefined);
      await page.getByText(`${doubtful.length} of the cells are doubtful, each with a mark in its corner`).waitFor();
      await settled(page);
      for (const index of messy.keys()) {
        const shown = await shownAt(page, `D${index + 11}`);
        expect(shown.includes(isText), shown).toBe(messy[index]?.[1] === undefined);
      }
      const held = async () => {
        const { workbook } = await download(page);
        return rows.map((_, row) => cellOf(workbook, `D${row + 11}`)?.value ?? null);
      };
      const pasted = rows.map(([text, day]) => (day === undefined ? text : dayOf(day)));
      expect(await held()).toEqual(pasted);
      await goTo(page, "D11");
      await page.keyboard.press("Control+z");
      await said(page, "D11", /empty/);
      expect(await held()).toEqual(rows.map(() => null));
      await page.keyboard.press("Control+y");
      await said(page, "D11", /03\/04\/2026/);
      expect(await held()).toEqual(pasted);
      expect(troubles).toEqual([]);
      await page.close();
    },
    8 * minutes,
  );

  it(
    "what may be another day stays text, typed or pasted, and functions refuse it; what is clear is a date",
    async () => {
      const { page, troubles } = await openSmall();
      const unclear = ["03/04/2026", "3.4.2026", "3-4-2026", "3 Apr", "May 12", "14/03/2026"];
      const clear = ["2026-03-14", "3 Apr 2026", "Apr 3, 2026"];
      for (const [place, text] of [...unclear, ...clear].entries()) await type(page, `D${place + 1}`, text);
      await type(page, "E1", "=FOOT.CLEARDATE(D1,28)");
      await goTo(page, "F1");
      await page.keyboard.press("ArrowDown");
      await paste(page, "text/plain", "03/04/2026");
      await goTo(page, "F3");
      await page.keyboard.press("ArrowDown");
      await paste(page, "text/plain", "03/04/2026\t5\n2026-03-14\t3 Apr");
      await goTo(page, "F6");
      await page.keyboard.press("ArrowDown");
      const british = `<td style="mso-number-format:'dd\\/mm\\/yyyy'">03/04/2026</td>`;
      await paste(page, "text/html", `<html><body><table><tr>${british}<td>7</td></tr></table></body></html>`);
      await settled(page);
      for (const [place, text] of unclear.entries())
        expect(await shownAt(page, `D${place + 1}`)).toContain(`${text} ${isText}`);
      expect(await shownAt(page, "D7")).toBe("Flock D7 2026-03-14");
      expect(await shownAt(page, "E1")).toContain('#VALUE! treated: "03/04/2026" is not a date');
      for (const cell of ["F2", "F4", "G5", "F7"]) expect(await shownAt(page, cell)).toContain(isText);

      const { workbook } = await download(page);
      const held = (...addresses: string[]) => addresses.map((address) => cellOf(workbook, address)?.value);
      expect(held("D1", "D2", "D3", "D4", "D5", "D6")).toEqual(unclear);
      expect(held("D7", "D8", "D9")).toEqual(["2026-03-14", "2026-04-03", "2026-04-03"].map(dayOf));
      expect(held("F2", "F4", "G4", "F5", "G5", "F7", "G7")).toEqual([
        "03/04/2026",
        "03/04/2026",
        5,
        dayOf("2026-03-14"),
        "3 Apr",
        "03/04/2026",
        7,
      ]);
      expect(troubles).toEqual([]);
      await page.close();
    },
    5 * minutes,
  );

  it(
    "a date that shows as 03/04/2026 is edited as 2026-04-03, and is the same date afterwards",
    async () => {
      const april = dayOf("2026-04-03");
      const { page } = await openSmall(`<row r="9"><c r="A9" s="1"><v>${april}</v></c></row>`, shownAsInBritain);
      expect(await shownAt(page, "A9")).toBe("Flock A9 03/04/2026");
      await page.keyboard.press("F2");
      await page.keyboard.press("Enter");
      await said(page, "A10");
      expect(await shownAt(page, "A9")).toBe("Flock A9 03/04/2026");
      await page.keyboard.press("F2");
      await page.keyboard.press("Backspace");
      await page.keyboard.type("4");
      await page.keyboard.press("Enter");
      await said(page, "A10");
      expect(await shownAt(page, "A9")).toBe("Flock A9 04/04/2026");
      expect(cellOf((await download(page)).workbook, "A9")?.value).toBe(april + 1);
      await page.close();
    },
    5 * minutes,
  );
});

it(
  "a date that is typed below the others of its column is shown like them, in the sheet and in the file",
  async () => {
    const { page } = await practice.open();
    await toSheet(page, "Cases");
    await page.keyboard.press("Control+ArrowDown");
    await page.keyboard.press("ArrowDown");
    const place = await page.getByLabel("Cell", { exact: true }).inputValue();
    await page.keyboard.type("2026-11-26");
    await page.keyboard.press("Tab");
    await page.keyboard.type("26 Nov 2026");
    await page.keyboard.press("Tab");
    for (const cell of [place, place.replace("A", "B")]) expect(await shownAt(page, cell)).toMatch(/ 26 Nov 2026/);
    // Undone and done again it is the same.
    await page.keyboard.press("Control+z");
    await page.keyboard.press("Control+y");
    await said(page, place.replace("A", "B"), / 26 Nov 2026/);
    const { workbook } = await download(page);
    const cases = workbook.sheets.find(({ name }) => name === "Cases");
    const row = Number(place.slice(1)) - 1;
    const styleAt = (at: number, column: number) =>
      cases?.rows.find((line) => line.row === at)?.cells.find((cell) => cell.column === column)?.style;
    expect(styleAt(row - 1, 0)).toBeDefined();
    for (const column of [0, 1]) expect(styleAt(row, column)).toBe(styleAt(row - 1, column));
    await page.close();
  },
  4 * minutes,
);

it(
  "one click into the line above the sheet is enough to type there, at the place that was clicked",
  async () => {
    const { page, troubles } = await openSmall();
    const line = page.locator("[data-u-comp=formula-bar] canvas");
    for (const [cell, content] of [
      ["D2", "limps"],
      ["D3", "stands"],
    ] as const) {
      await type(page, cell, content);
      await goTo(page, cell);
      await line.click({ position: { x: 200, y: 12 } });
      const field = () => page.evaluate(() => document.activeElement?.closest("[id^=univer-doc-selection]")?.id ?? "");
      await expect.poll(field).toMatch(/FORMULA_BAR$/);
      await page.keyboard.type(" badly");
      await page.keyboard.press("Enter");
      expect(await shownAt(page, cell)).toBe(`Flock ${cell} ${content} badly`);
    }
    expect(troubles).toEqual([]);
    await page.close();
  },
  4 * minutes,
);

it(
  "what is typed at the speed of a machine stands where it was typed, whichever key leads on",
  async () => {
    const { page, troubles } = await openSmall();
    await goTo(page, "D10");
    await settled(page);
    const typed: { row: number; column: number; text: string }[] = [];
    let [row, column] = [9, 3];
    for (let entry = 0; entry < 32; entry += 1) {
      const text = `2026-03-${String((entry % 28) + 1).padStart(2, "0")}`;
      const key = ["Enter", "Tab", "ArrowDown", "ArrowRight"][Math.floor(entry / 8)] ?? "Enter";
      typed.push({ row, column, text });
      await page.keyboard.type(text);
      await page.keyboard.press(key);
      if (key === "Enter" || key === "ArrowDown") row += 1;
      else column += 1;
    }
    await settled(page);
    const { workbook } = await download(page);
    const held = typed.map((place) => cellOf(workbook, placeText(place))?.value ?? null);
    expect(held).toEqual(typed.map(({ text }) => dayOf(text)));
    expect(troubles).toEqual([]);
    await page.close();
  },
  5 * minutes,
);

describe("formulas in the practice sheet", () => {
  it(
    "go into the file as they were typed, in the form that Excel keeps them in",
    async () => {
      const { page, troubles } = await openSmall();
      await type(page, "D1", "=FOOT.FLOCKPREV(Gathers[Lame],Gathers[Looked at])");
      await type(page, "D2", "=SUM(A2:A4*B2:B4)");
      await type(page, "D3", "=LET(x,1,x+1)");
      await type(page, "D4", "=SUM(A2:A4)");
      await type(page, "F1", "=A2:A4*2");
      await settled(page);
      expect(await shownAt(page, "D1")).toContain("10.0%");
      expect(await shownAt(page, "D3")).toContain("D3 2=");
      const { workbook } = await download(page);
      const held = (address: string) => {
        const cell = cellOf(workbook, address);
        return [cell?.formula?.text, cell?.value, cell?.dynamic];
      };
      expect(held("D1")).toEqual(["_xldudf_FOOT_FLOCKPREV(Gathers[Lame],Gathers[Looked at])", 0.1, true]);
      expect(held("D2")).toEqual(["SUM(A2:A4*B2:B4)", 140, true]);
      expect(held("D3")).toEqual(["_xlfn.LET(_xlpm.x,1,_xlpm.x+1)", 2, true]);
      expect(held("D4")).toEqual(["SUM(A2:A4)", 6, false]);
      expect(held("F1")).toEqual(["A2:A4*2", 2, true]);
      expect(cellOf(workbook, "F3")?.value).toBe(6);
      expect(troubles).toEqual([]);
      await page.close();
    },
    5 * minutes,
  );

  it(
    "the days between two dates are a number, and formats of answers are nothing to undo",
    async () => {
      const { page } = await openSmall();
      await type(page, "D1", "2026-03-14");
      await type(page, "D2", "2026-03-24");
      await type(page, "E1", "=FOOT.CLEARDATE(D2,28)-FOOT.CLEARDATE(D1,28)");
      await type(page, "E2", "=FOOT.CLEARDATE(D1,28)");
      await settled(page);
      expect(await shownAt(page, "E1")).toContain("E1 10=");
      await goTo(page, "E2");
      expect(await said(page, "E2", /2026/)).toContain("E2 12 Apr 2026=");
      await page.keyboard.press("Control+z");
      await said(page, "E2", /empty/);
      expect(await shownAt(page, "E1")).toContain("E1 10=");
      await page.close();
    },
    5 * minutes,
  );

  it(
    "what is typed into a cell that one of them fills stays there, and in the file",
    async () => {
      const spill = `<row r="9"><c r="A9" cm="1"><f t="array" ref="A9:A11">_xlfn.SEQUENCE(3)</f><v>1</v></c></row><row r="10"><c r="A10"><v>2</v></c></row><row r="11"><c r="A11"><v>3</v></c></row>`;
      const { page } = await openSmall(spill);
      expect(await shownAt(page, "A11")).toBe("Flock A11 3");
      await type(page, "A10", "mine");
      await goTo(page, "A9");
      expect(await said(page, "A9", /SPILL/)).toContain("A9 #SPILL!=SEQUENCE(3)");
      const { workbook } = await download(page);
      expect(["A9", "A10", "A11"].map((address) => cellOf(workbook, address)?.value ?? null)).toEqual([
        { error: "#SPILL!" },
        "mine",
        null,
      ]);
      await page.close();
    },
    5 * minutes,
  );
});
