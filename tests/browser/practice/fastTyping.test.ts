import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, expect, inject, it } from "vitest";
import { type Serving, serveFolder } from "../../../src/build/practice/serveFolder.ts";
import { openWorkbook } from "../../../src/workbook/openWorkbook.ts";
import { buildWorkbook, rowsOf } from "../../workbook/buildWorkbook.ts";
import { type Driven, inChromium, inFirefox, until } from "./drivenPages.ts";

const minutes = 60_000;
const folder = mkdtempSync(join(tmpdir(), "soundfold-fast-"));
const book = join(folder, "fast.xlsx");
let serving: Serving;
beforeAll(async () => {
  serving = await serveFolder(inject("practiceFolder"), [0]);
  writeFileSync(
    book,
    buildWorkbook({ sheets: [{ name: "Flock", rows: rowsOf({ A1: "Typed below", Z1: "=SUM(B2:Y60)" }) }] }),
  );
});
afterAll(() => {
  serving.close();
  rmSync(folder, { recursive: true });
});

interface Try {
  readonly row: number;
  readonly column: number;
  readonly text: string;
}

/** Where the cells are in the window: the first row and column below and beside the headings, each of its usual size. */
async function cellsOf(driven: Driven): Promise<(row: number, column: number) => readonly [x: number, y: number]> {
  const { left, top } = await driven.evaluate(() => {
    const boxes = [...document.querySelectorAll("canvas")].map((canvas) => canvas.getBoundingClientRect());
    const largest = boxes.sort((one, other) => other.width * other.height - one.width * one.height)[0];
    return { left: largest?.left ?? 0, top: largest?.top ?? 0 };
  });
  return (row, column) => [left + 46 + column * 68 + 30, top + 20 + row * 20 + 10];
}

it.each([
  ["Chromium", inChromium],
  ["Firefox", inFirefox],
] as const)(
  "in %s what is typed at the speed of a machine stands where it was typed, two hundred times, whichever key or click leads on",
  async (_, start) => {
    const driven = await start(serving.address);
    try {
      await until(
        () => driven.text(".note"),
        (text) => text.includes("is open."),
        "the book that comes with the page",
      );
      await driven.choose(book);
      await until(
        () => driven.text(".note"),
        (text) => text.includes("fast.xlsx is open."),
        "the workbook",
      );
      const at = await cellsOf(driven);
      const tries: Try[] = [];
      const to = async (row: number, column: number): Promise<void> => driven.mouse.click(...at(row, column));
      const typeAt = async (row: number, column: number): Promise<void> => {
        const text = String(1000 + tries.length);
        tries.push({ row, column, text });
        await driven.keys.type(text);
      };
      for (let line = 0; line < 4; line += 1) {
        await to(1, line);
        for (let step = 0; step < 20; step += 1) {
          await typeAt(1 + step, line);
          await driven.keys.press(line < 2 ? "Enter" : "ArrowDown");
        }
      }
      for (let line = 0; line < 8; line += 1) {
        await to(1 + line, 4);
        for (let step = 0; step < 5; step += 1) {
          await typeAt(1 + line, 4 + step);
          await driven.keys.press(line < 4 ? "Tab" : "ArrowRight");
        }
      }
      for (let click = 0; click < 40; click += 1) {
        const [row, column] = [10 + (click % 8), 4 + Math.floor(click / 8)];
        await to(row, column);
        await typeAt(row, column);
      }
      for (let click = 0; click < 40; click += 1) {
        const [row, column] = [18 + (click % 5), 4 + Math.floor(click / 5)];
        await to(row, column);
        await typeAt(row, column);
        await driven.keys.press("Enter");
      }
      await driven.keys.down("Control");
      await driven.keys.press("s");
      await driven.keys.up("Control");
      const [saved = ""] = await until(driven.downloads, (files) => files.length > 0, "the saved workbook");
      await until(
        () => driven.text(".note"),
        (text) => text.includes("is saved among your downloads"),
        "what was done",
      );
      const held = new Map(
        openWorkbook(readFileSync(saved)).sheets.flatMap(({ rows }) =>
          rows.flatMap(({ cells }) => cells.map(({ row, column, value }) => [`${row} ${column}`, value] as const)),
        ),
      );
      expect(tries).toHaveLength(200);
      const wrong = tries.filter(({ row, column, text }) => held.get(`${row} ${column}`) !== Number(text));
      expect(wrong).toEqual([]);
      const places = new Set(["0 0", "0 25", ...tries.map(({ row, column }) => `${row} ${column}`)]);
      expect([...held].filter(([place, value]) => value !== null && !places.has(place))).toEqual([]);
      expect(driven.troubles).toEqual([]);
    } finally {
      await driven.close();
    }
  },
  6 * minutes,
);
