import { execFileSync, spawnSync } from "node:child_process";
import {
  existsSync,
  lstatSync,
  mkdirSync,
  mkdtempSync,
  readFileSync,
  readlinkSync,
  rmSync,
  symlinkSync,
  writeFileSync,
} from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterEach, beforeEach, describe, expect, test } from "vitest";
import { openWorkbook } from "../../src/workbook/openWorkbook.ts";
import { buildWorkbook, rowsOf } from "../workbook/buildWorkbook.ts";
import { runSoundfold, soundfold } from "./runSoundfold.ts";

let folder: string;
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), "soundfold-odd-"));
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

const farm = (cells: Parameters<typeof rowsOf>[0] = {}, name = "Gathers"): Uint8Array =>
  buildWorkbook({ sheets: [{ name, rows: rowsOf({ A1: 4, B1: 20, C1: "=FOOT.FLOCKPREV(A1,B1)", ...cells }) }] });
const write = (name: string, bytes: Uint8Array): void => writeFileSync(join(folder, name), bytes);
const run = (...given: string[]) => runSoundfold(given, folder);

describe("a pipe that is called as a workbook is", () => {
  beforeEach(() => {
    execFileSync("mkfifo", [join(folder, "pipe.xlsx")]);
  });

  test("is refused by recalc and not waited for", async () => {
    expect(await run("recalc", "pipe.xlsx", "out.xlsx")).toEqual({
      code: 2,
      output: "",
      errors: "pipe.xlsx cannot be read: it is no ordinary file.\n",
    });
  });

  test("is named by collate and stops nothing", async () => {
    mkdirSync(join(folder, "books"));
    execFileSync("mkfifo", [join(folder, "books", "pipe.xlsx")]);
    write("books/farm.xlsx", farm());
    const { code, errors } = await run("collate", "books", "--out", "all.xlsx");
    expect(code).toBe(2);
    expect(errors).toMatch(/None of the 2 files .* can be used/);
    expect(errors).toMatch(/pipe\.xlsx +It cannot be read: it is no ordinary file\./);
  });
});

describe("an output that is a link", () => {
  const shareIn = (name: string): unknown =>
    openWorkbook(readFileSync(join(folder, name))).sheets[0]?.rows[0]?.cells[2]?.value;
  beforeEach(() => write("farm.xlsx", farm()));

  test("stays one, and the file it leads to is written", async () => {
    mkdirSync(join(folder, "elsewhere"));
    write("elsewhere/kept.xlsx", farm({ C1: 0 }));
    symlinkSync(join("elsewhere", "kept.xlsx"), join(folder, "out.xlsx"));
    const { code } = await run("recalc", "farm.xlsx", "out.xlsx", "--force");
    expect(code).toBe(0);
    expect(readlinkSync(join(folder, "out.xlsx"))).toBe(join("elsewhere", "kept.xlsx"));
    expect([shareIn("elsewhere/kept.xlsx"), lstatSync(join(folder, "elsewhere/kept.xlsx")).isFile()]).toEqual([
      0.2,
      true,
    ]);
  });

  test("and leads to nothing yet makes the file that it names", async () => {
    symlinkSync("later.xlsx", join(folder, "out.xlsx"));
    expect((await run("recalc", "farm.xlsx", "out.xlsx")).code).toBe(0);
    expect([readlinkSync(join(folder, "out.xlsx")), shareIn("later.xlsx")]).toEqual(["later.xlsx", 0.2]);
  });

  test("to the input is refused", async () => {
    symlinkSync("farm.xlsx", join(folder, "out.xlsx"));
    const { code, errors } = await run("recalc", "farm.xlsx", "out.xlsx", "--force");
    expect([code, errors]).toEqual([
      2,
      "out.xlsx is the input itself, which is never overwritten; name another output.\n",
    ]);
  });

  test("in a circle is refused", async () => {
    symlinkSync("b.xlsx", join(folder, "a.xlsx"));
    symlinkSync("a.xlsx", join(folder, "b.xlsx"));
    const { code, errors } = await run("recalc", "farm.xlsx", "a.xlsx", "--force");
    expect([code, errors]).toEqual([2, "a.xlsx cannot be written: its links lead in a circle.\n"]);
  });
});

test("orders to the terminal in a file reach it in no message", async () => {
  // Clears the screen, sets the title, goes back to the start of the line, turns the direction of reading.
  const orders = "_x001B_[2J_x001B_]0;title_x0007__x009B_31m_x000D_\u202e";
  write("farm.xlsx", farm({ A1: `${orders}lame`, D1: "=1/0" }, "Ewes\u202e"));
  const { code, output, errors } = await run("recalc", "farm.xlsx");
  expect(code).toBe(0);
  expect(output).toContain("\ufffd[2J\ufffd]0;title\ufffd");
  expect(output).toContain("Ewes\ufffd!D1");
  expect(output + errors).not.toMatch(/(?!\n)\p{Cc}|[\u202a-\u202e]/u);
});

test("a message quotes no more of a cell or of a name than anyone reads", async () => {
  const long = "x".repeat(40_000);
  const formulas = { C2: `=${long}!A1`, C3: `=${long}(1)`, C4: `=FOOT.${long}(1)`, C5: `=INDEX(${long}[a],1)` };
  write("farm.xlsx", farm({ A1: long, ...formulas }, "S".repeat(40_000)));
  const { code, output } = await run("recalc", "farm.xlsx");
  expect(code).toBe(0);
  expect(output).toContain("lame: ");
  expect(Math.max(...output.split("\n").map(({ length }) => length))).toBeLessThan(1500);
});

// A device that is always full, as a disk may be.
test.runIf(existsSync("/dev/full"))("where nothing can be shown, that is said and the file is saved", () => {
  write("farm.xlsx", farm());
  const { status, stderr } = spawnSync(
    "sh",
    ["-c", `"$0" "$1" recalc farm.xlsx >/dev/full`, process.execPath, soundfold],
    {
      cwd: folder,
      encoding: "utf8",
    },
  );
  expect([status, stderr]).toEqual([
    1,
    "Not all can be shown: the disk is full. A file that was asked for is saved before this.\n",
  ]);
  expect(existsSync(join(folder, "farm-worked-out.xlsx"))).toBe(true);
});
