import { execFileSync } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { strToU8, unzipSync, zipSync } from "fflate";
import type { CalcVersion } from "../spreadsheets/calcProgram.ts";
import { startCalc } from "../spreadsheets/startCalc.ts";
import { type Call, flatDocument, place } from "../spreadsheets/writeSheets.ts";
import type { BenchReport } from "./report.ts";

const calls = 10_000;
const rounds = 3;
/** How many times as long as a constant a call may take LibreOffice. */
const most = 1.3;
const versions: readonly CalcVersion[] = ["7.4", "25.2"];

// Reads a call and answers it without looking at it: what is left is Calc, Python and the pipe.
const answersAlike = `require("node:readline").createInterface({ input: process.stdin }).on("line", () => process.stdout.write('{"cells":[[0.2]]}\\n'));`;

/** What calls cost in LibreOffice, against calls through the same bridge that are answered with a constant. */
export async function bench(): Promise<BenchReport> {
  execFileSync("npm", ["run", "--silent", "build:libreoffice"], { stdio: "inherit" });
  const folder = mkdtempSync(join(tmpdir(), "soundfold-bench-"));
  try {
    const constant = join(folder, "constant.oxt");
    const entries = unzipSync(readFileSync("dist/soundfold.oxt"));
    if (!entries["answerLines.cjs"]) throw new Error("the extension has no answerLines.cjs to put a constant in");
    writeFileSync(constant, zipSync({ ...entries, "answerLines.cjs": strToU8(answersAlike) }));
    const path = join(folder, "calls.fods");
    writeFileSync(path, flatDocument({ constants: new Map(), calls: new Map(Array.from({ length: calls }, callAt)) }));
    const rows: BenchReport["rows"][number][] = [];
    for (const version of versions) rows.push(await rowFor(version, constant, path));
    return {
      title: "Calls in LibreOffice",
      rows,
      notes: [
        `${calls.toLocaleString("en")} calls of FLOCKPREV, one a cell, worked out afresh; processor time of LibreOffice in all its threads, without that of the program at the other end of the pipe; the least of ${rounds} rounds of each, in turns. The constant is an extension function that gives 0.2 through the same bridge.`,
      ],
      limits: rows.map(({ LibreOffice, ratio }) => ({
        what: `ratio in LibreOffice ${LibreOffice}`,
        measured: Number(ratio),
        most,
      })),
    };
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

const callAt = (_: unknown, row: number): [string, Call] => [
  place(row, 0),
  { name: "FLOCKPREV", given: [row % 7, 20], rows: 1, columns: 1 },
];

async function rowFor(version: CalcVersion, constant: string, path: string): Promise<BenchReport["rows"][number]> {
  const ours = await startCalc(version);
  const alike = await startCalc(version, {}, constant);
  try {
    let [real, fixed] = [Number.POSITIVE_INFINITY, Number.POSITIVE_INFINITY];
    // In turns, so that whatever else the machine does falls on both.
    for (let round = 0; round < rounds; round++) {
      real = Math.min(real, (await ours.read(path)).processorSeconds);
      const answered = await alike.read(path);
      fixed = Math.min(fixed, answered.processorSeconds);
      if (answered.sheets.Calls?.[1]?.[0] !== 0.2) throw new Error("the constant was not what answered");
    }
    return {
      LibreOffice: version,
      "calls of FLOCKPREV": `${real.toFixed(2)} s`,
      "calls of a constant": `${fixed.toFixed(2)} s`,
      ratio: (real / fixed).toFixed(2),
    };
  } finally {
    await ours.stop();
    await alike.stop();
  }
}
