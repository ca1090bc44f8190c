import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import * as files from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterEach, beforeEach, describe, expect, test, vi } from "vitest";
import { BadInput } from "../../src/cli/badInput.ts";
import { outputFor } from "../../src/cli/outputFor.ts";
import { writeWhole } from "../../src/cli/writeWhole.ts";

// Tests may run as a user who may do everything, so what the system refuses others is put in its mouth.
vi.mock("node:fs/promises", async (original) => {
  const own = await original<typeof files>();
  return { ...own, stat: vi.fn(own.stat), rename: vi.fn(own.rename), rm: vi.fn(own.rm) };
});

const refusal = (code: string): Error => Object.assign(new Error(`${code}: not now`), { code });
const sentenceOf = (work: Promise<unknown>): Promise<string> =>
  work.then(
    () => "",
    (error: unknown) => {
      if (error instanceof BadInput) return error.message;
      throw error;
    },
  );

let folder: string;
let input: string;
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), "soundfold-output-"));
  input = join(folder, "farm.xlsx");
  writeFileSync(input, "x");
});
afterEach(() => {
  vi.clearAllMocks();
  rmSync(folder, { recursive: true, force: true });
});

describe("an output that cannot be looked at is refused in one sentence", () => {
  test.each([
    ["EACCES", "you are not allowed to"],
    ["EIO", "EIO"],
  ])("%s", async (code, reason) => {
    const output = join(folder, "closed", "out.xlsx");
    const { stat } = await vi.importActual<typeof files>("node:fs/promises");
    vi.mocked(files.stat).mockImplementationOnce(stat).mockRejectedValueOnce(refusal(code));
    expect(await sentenceOf(outputFor(input, output, false))).toBe(`${output} cannot be written: ${reason}.`);
  });

  test("a name that grows too long", async () => {
    const long = join(folder, `${"f".repeat(245)}.xlsx`);
    writeFileSync(long, "x");
    expect(await sentenceOf(outputFor(long, undefined, false))).toBe(
      `${join(folder, `${"f".repeat(245)}-worked-out.xlsx`)} cannot be written: its name is too long; name another output.`,
    );
    expect(await outputFor(long, join(folder, "short.xlsx"), false)).toBe(join(folder, "short.xlsx"));
  });
});

describe("an output that cannot be replaced", () => {
  test.each(["EPERM", "EBUSY"])("may be open in another program: %s", async (code) => {
    const output = join(folder, "out.xlsx");
    writeFileSync(output, "before");
    vi.mocked(files.rename).mockRejectedValueOnce(refusal(code));
    expect(await sentenceOf(writeWhole(output, Uint8Array.of(1)))).toBe(
      `${output} cannot be written: it may be open in another program; close it there, or name another output.`,
    );
    expect(readFileSync(output, "utf8")).toBe("before");
    expect(readdirSync(folder).sort()).toEqual(["farm.xlsx", "out.xlsx"]);
  });

  test("is named with the reason that came first", async () => {
    vi.mocked(files.rename).mockRejectedValueOnce(refusal("EBUSY"));
    vi.mocked(files.rm).mockRejectedValueOnce(refusal("EACCES"));
    expect(await sentenceOf(writeWhole(join(folder, "out.xlsx"), Uint8Array.of(1)))).toContain(
      "open in another program",
    );
  });
});
