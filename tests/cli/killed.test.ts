import { spawn } from "node:child_process";
import { existsSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { build } from "esbuild";
import { afterAll, beforeAll, expect, it } from "vitest";
import { seededRandom } from "../../src/workbooks/inventedFlock/seededRandom.ts";
import { buildWorkbook, rowsOf } from "../workbook/buildWorkbook.ts";

const inRepository = (path: string): string => fileURLToPath(new URL(`../../${path}`, import.meta.url));
// Below node_modules, so that the packages left out of the bundle are found.
const command = inRepository(`node_modules/.cache/soundfold-killed-${process.pid}/main.mjs`);

const kills = 50;
const workbook = buildWorkbook({
  sheets: [
    {
      name: "Gathers",
      rows: rowsOf(
        Object.fromEntries(
          Array.from({ length: 40 }, (_, index) => [
            [`A${index + 1}`, index % 7],
            [`B${index + 1}`, 20 + (index % 30)],
            [`C${index + 1}`, `=_xldudf_FOOT_FLOCKPREV(A${index + 1},B${index + 1})+SUM(A1:A${index + 1})`],
          ]).flat() as [string, string | number][],
        ),
      ),
    },
  ],
  // Something that takes a while to write.
  parts: { "xl/media/picture.bin": Uint8Array.from({ length: 1_000_000 }, (_, index) => (index * index) % 251) },
});

let folder: string;
const inFolder = (name: string): string => join(folder, name);

/** Runs the command and kills it after so many ms, or not at all. @returns whether it was killed */
const run = (killAfter?: number): Promise<boolean> =>
  new Promise((resolve, reject) => {
    const child = spawn(process.execPath, [command, "recalc", "farm.xlsx", "out.xlsx", "--force"], {
      cwd: folder,
      stdio: "ignore",
    });
    const timer = killAfter === undefined ? undefined : setTimeout(() => child.kill("SIGKILL"), killAfter);
    child.on("error", reject);
    child.on("exit", (code, signal) => {
      clearTimeout(timer);
      if (signal === "SIGKILL") resolve(true);
      else if (code === 0) resolve(false);
      else reject(new Error(`it ended with ${code ?? signal}`));
    });
  });

beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), "soundfold-killed-"));
  mkdirSync(join(command, ".."), { recursive: true });
  await build({
    entryPoints: [inRepository("src/cli/main.ts")],
    outfile: command,
    bundle: true,
    format: "esm",
    platform: "node",
    packages: "external",
  });
  writeFileSync(inFolder("farm.xlsx"), workbook);
});
afterAll(() => {
  rmSync(folder, { recursive: true, force: true });
  rmSync(join(command, ".."), { recursive: true, force: true });
});

it("leaves the input whole, and the output whole or absent, at any moment", async () => {
  const started = performance.now();
  expect(await run()).toBe(false);
  let whole = performance.now() - started;
  const answer = readFileSync(inFolder("out.xlsx"));
  expect(answer.equals(workbook)).toBe(false);
  const earlier = Buffer.from("what stood here before");

  const random = seededRandom(50);
  let killed = 0;
  let finished = 0;
  const found = { absent: 0, earlier: 0, answer: 0 };
  for (let turn = 0; killed < kills; turn++) {
    // A run that ends before it is killed tells how long one takes by now, and the next is killed earlier.
    expect(finished).toBeLessThan(10 * kills);
    const stood = turn % 2 === 0;
    rmSync(inFolder("out.xlsx"), { force: true });
    if (stood) writeFileSync(inFolder("out.xlsx"), earlier);
    // Half of them late, when the file is being written.
    const at = whole * (random.happens(0.5) ? random.share() : 0.7 + 0.35 * random.share());
    const began = performance.now();
    if (await run(at)) killed++;
    else {
      finished++;
      whole = (whole + performance.now() - began) / 2;
    }
    expect(readFileSync(inFolder("farm.xlsx")).equals(workbook)).toBe(true);
    if (!existsSync(inFolder("out.xlsx"))) {
      expect(stood).toBe(false);
      found.absent++;
    } else {
      const left = readFileSync(inFolder("out.xlsx"));
      expect(left.equals(answer) || (stood && left.equals(earlier))).toBe(true);
      if (left.equals(answer)) found.answer++;
      else found.earlier++;
    }
    // What was being written may stay behind under a name that is nobody's workbook.
    for (const name of readdirSync(folder).filter((entry) => entry !== "farm.xlsx" && entry !== "out.xlsx")) {
      expect(name).toMatch(/^\.out\.xlsx\.\d+\.part$/);
      rmSync(inFolder(name));
    }
  }
  expect(found.absent).toBeGreaterThan(0);
  expect(found.earlier).toBeGreaterThan(0);
  // After all that, the command still does its work.
  expect(await run()).toBe(false);
  expect(readFileSync(inFolder("out.xlsx")).equals(answer)).toBe(true);
}, 900_000);
