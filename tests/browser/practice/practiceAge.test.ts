import { unzipSync, zipSync } from "fflate";
import type { Page } from "playwright-core";
import { expect, it } from "vitest";
import { dayOf, isoText } from "../../../src/cells/day.ts";
import { wallClock } from "../../../src/hosts/sheets/wallClock.ts";
import { ageWords } from "../../../src/pages/practice/age/ageWords.ts";
import { zones } from "../../functions/zones.ts";
import { buildWorkbook, rowsOf } from "../../workbook/buildWorkbook.ts";
import { download, goTo, openFile, pick, said, settled, type } from "./practicePage.ts";
import { servedPractice } from "./servedPractice.ts";

const minutes = 60_000;

const practice = servedPractice();

/** 4 of 20 lame, with an answer that was true of other records. */
const records = '<c r="A1"><v>4</v></c><c r="B1"><v>20</v></c>';
const old = '<c r="C1"><f>_xldudf_FOOT_FLOCKPREV(A1,B1)</f><v>0.75</v></c>';
const book = (cells: string, calculation = "") =>
  buildWorkbook({ sheets: [{ name: "Flock", rows: `<row r="1">${records}${cells}</row>` }], calculation });

const line = (page: Page) => page.locator(".age");

it(
  "a workbook that asks for it, or has no answers, is worked out before it is shown",
  async () => {
    const { page, troubles } = await practice.open();
    // The book of the page itself was worked out when the page was built.
    expect(await line(page).count()).toBe(0);
    const asks = '<calcPr calcId="191029" fullCalcOnLoad="1"/>';
    const lists = '<c r="C1"><f>_xldudf_FOOT_FLOCKPREV(A1,B1)</f></c><c r="D1"><f>C1*100</f><v>75</v></c>';
    for (const [name, bytes] of [
      ["asks.xlsx", book(old, asks)],
      ["empty.xlsx", book(lists)],
    ] as const) {
      await openFile(page, name, bytes);
      await page.getByText(`${name} is open. ${ageWords.workedOut}`).waitFor();
      await goTo(page, "C1");
      expect(await said(page, "C1")).toMatch(/^Flock C1 (0\.2|20%|20\.0%)/);
      expect(await line(page).count()).toBe(0);
    }
    await goTo(page, "D1");
    expect(await said(page, "D1")).toContain("Flock D1 20");
    await type(page, "A1", "5");
    await said(page, "A2");
    await goTo(page, "D1");
    expect(await said(page, "D1", /25/)).toContain("Flock D1 25");
    expect(troubles).toEqual([]);
    await page.close();
  },
  5 * minutes,
);

it(
  "saved answers of unknown age are said to be so until everything is worked out, with what was typed",
  async () => {
    const { page, troubles } = await practice.open();
    await openFile(page, "mine.xlsx", book(old));
    await line(page).getByText(ageWords.old.saved).waitFor();
    await goTo(page, "C1");
    expect(await said(page, "C1")).toContain("Flock C1 0.75");
    await type(page, "D1", "seen by me");
    expect(await line(page).count()).toBe(1);
    await goTo(page, "C1");
    await line(page).getByRole("button", { name: ageWords.workOut }).click();
    await page.getByText(ageWords.workedOut).waitFor();
    await settled(page);
    await line(page).waitFor({ state: "detached" });
    // The cell that was looked at is looked at still.
    expect(await said(page, "C1", /0\.2|20/)).toMatch(/Flock C1 (0\.2|20%|20\.0%)/);
    const { workbook } = await download(page);
    expect(workbook.sheets[0]?.rows[0]?.cells.map(({ value }) => value)).toEqual([4, 20, 0.2, "seen by me"]);
    await openFile(page, "plain.xlsx", book(""));
    expect(await line(page).count()).toBe(0);
    expect(troubles).toEqual([]);
    await page.close();
  },
  5 * minutes,
);

it(
  "a damaged workbook is refused with the name of its part, and the open one stays",
  async () => {
    const { page } = await practice.open();
    const plain = Buffer.from(zipSync(unzipSync(book(old)), { level: 0 })).toString("latin1");
    await pick(page, "bad.xlsx", Buffer.from(plain.replace("<v>4</v>", "<v>0</v>"), "latin1"));
    await page.getByText("bad.xlsx was not opened. The file is damaged: its part xl/worksheets/sheet1.xml").waitFor();
    expect(await page.locator(".note").textContent()).toContain("does not match its checksum");
    await page.close();
  },
  5 * minutes,
);

it(
  "today is the day on the wall in every time zone, and a new day is told of",
  async () => {
    const { page, troubles } = await practice.open();
    const emulation = await page.context().newCDPSession(page);
    const today = dayOf("2026-03-14");
    const at = async (zone: string, day: number, hour: number): Promise<void> => {
      await emulation.send("Emulation.setTimezoneOverride", { timezoneId: zone });
      await page.clock.setFixedTime(wallClock(zone).dateOf(day + hour / 24));
    };
    const list = buildWorkbook({
      sheets: [
        {
          name: "Flock",
          rows: rowsOf({
            A1: "ZZ 0123456 00001",
            B1: today - 11,
            C1: 10,
            A2: "ZZ 0123456 00002",
            B2: today - 10,
            C2: 10,
            E1: '=TEXT(TODAY(),"yyyy-mm-dd")',
            E2: "=HOUR(NOW())",
            G1: "=_xldudf_FOOT_NOTCLEAR(TODAY(),A1:A2,B1:B2,C1:C2)",
          }),
        },
      ],
    });
    let opened = 0;
    for (const zone of zones) {
      for (const hour of [0.5, 21]) {
        await at(zone, today, hour);
        opened += 1;
        await openFile(page, `list${opened}.xlsx`, list);
        for (const [cell, shown] of [
          ["E1", isoText(today)],
          ["E2", String(Math.floor(hour))],
          ["G2", "ZZ 0123456 00002"],
        ] as const) {
          await goTo(page, cell);
          expect((await said(page, cell)).slice(0, `Flock ${cell} ${shown}`.length)).toBe(`Flock ${cell} ${shown}`);
        }
      }
    }
    const zone = "Pacific/Pago_Pago";
    await at(zone, today, 23.9);
    await openFile(page, "late.xlsx", list);
    await page.evaluate(() => document.dispatchEvent(new Event("visibilitychange")));
    expect(await line(page).count()).toBe(0);
    await at(zone, today + 1, 0.1);
    await page.evaluate(() => document.dispatchEvent(new Event("visibilitychange")));
    await line(page).getByText(ageWords.old.day).waitFor();
    await line(page).getByRole("button", { name: ageWords.workOut }).click();
    await line(page).waitFor({ state: "detached" });
    await settled(page);
    await goTo(page, "E1");
    expect(await said(page, "E1", /2026-03-15/)).toContain(isoText(today + 1));
    await goTo(page, "G2");
    expect(await said(page, "G2", /clear/)).toContain("every animal is clear");
    expect(troubles).toEqual([]);
    await page.close();
  },
  10 * minutes,
);
