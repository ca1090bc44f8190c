/**
 * How near the functions come to the reference values: `npx tsx tests/references/largestErrors.ts` runs the tests of the
 * core that hold digits to a reference, and writes largestErrors.json beside this file, from which docs/methods/digits.md
 * is made (`npm run generate`).
 */
import { execFileSync } from "node:child_process";
import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join, relative } from "node:path";

interface Line {
  readonly test: string;
  readonly file: string;
  readonly error: number;
  readonly allowed: number;
}

/** Looser checks are of formulas that are near by their nature, not of digits. */
const digits = 1e-3;

const folder = mkdtempSync(join(tmpdir(), "soundfold-errors-"));
try {
  execFileSync(join("node_modules", ".bin", "vitest"), ["run", "--project", "core"], {
    env: { ...process.env, SOUNDFOLD_ERRORS: folder },
    stdio: ["ignore", "ignore", "inherit"],
  });
  const lines = readdirSync(folder).flatMap((name) =>
    readFileSync(join(folder, name), "utf8")
      .trim()
      .split("\n")
      .map((line) => JSON.parse(line) as Line),
  );
  const checks = new Map<string, { topic: string; test: string; values: number; largest: number }>();
  for (const { test, file, error, allowed } of lines) {
    if (allowed > digits) continue;
    const topic = relative("tests/core", file).split("/")[0] ?? "";
    const check = checks.get(`${file} ${test}`) ?? { topic, test, values: 0, largest: 0 };
    checks.set(`${file} ${test}`, { ...check, values: check.values + 1, largest: Math.max(check.largest, error) });
  }
  const sorted = [...checks.values()].sort((a, b) => (`${a.topic} ${a.test}` < `${b.topic} ${b.test}` ? -1 : 1));
  writeFileSync(new URL("./largestErrors.json", import.meta.url), `${JSON.stringify(sorted, null, 2)}\n`);
  console.log(`${sorted.length} checks, ${sorted.reduce((sum, { values }) => sum + values, 0)} values`);
} finally {
  rmSync(folder, { recursive: true, force: true });
}
