import { execFileSync } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { strToU8, unzipSync, zipSync } from "fflate";
import { startCalc } from "./startCalc.ts";
import { type Call, flatDocument, place } from "./writeSheets.ts";

// `npx tsx tests/spreadsheets/timeBridge.ts`: what 10,000 calls cost in Calc, against 10,000 calls through the same
// bridge that are answered with a constant.

const calls = 10_000;
const rounds = 5;

execFileSync("npm", ["run", "--silent", "build:libreoffice"], { stdio: "inherit" });
const folder = mkdtempSync(join(tmpdir(), "soundfold-bench-"));
const constant = join(folder, "constant.oxt");
const entries = unzipSync(readFileSync("dist/soundfold.oxt"));
entries["answerLines.cjs"] = strToU8(
  `require("node:readline").createInterface({ input: process.stdin }).on("line", () => process.stdout.write('{"cells":[[0.2]]}\\n'));`,
);
writeFileSync(constant, zipSync(entries));

const sheet = new Map<string, Call>(
  Array.from({ length: calls }, (_, row) => [
    place(row, 0),
    { name: "FLOCKPREV", given: [row % 7, 20], rows: 1, columns: 1 },
  ]),
);
const path = join(folder, "calls.fods");
writeFileSync(path, flatDocument({ constants: new Map(), calls: sheet }));

for (const version of ["7.4", "25.2"] as const) {
  const ours = await startCalc(version);
  const theirs = await startCalc(version, {}, constant);
  const [real, fixed]: [number[], number[]] = [[], []];
  // In turns, so that whatever else the machine does falls on both.
  for (let round = 0; round < rounds; round++) {
    real.push((await ours.read(path)).seconds);
    fixed.push((await theirs.read(path)).seconds);
  }
  await ours.stop();
  await theirs.stop();
  const [best, base] = [Math.min(...real), Math.min(...fixed)];
  console.log(
    `LibreOffice ${version}: ${calls} calls ${best.toFixed(2)} s, constant ${base.toFixed(2)} s, ratio ${(best / base).toFixed(2)}`,
  );
}
rmSync(folder, { recursive: true });
