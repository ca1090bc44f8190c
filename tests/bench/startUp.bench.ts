import { execFileSync } from "node:child_process";
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { gzipSync } from "node:zlib";
import { developmentUrl } from "../../src/build/baseUrl.ts";
import { excelAddIn } from "../../src/build/release/excelAddIn.ts";
import { libreOfficeExtension } from "../../src/build/release/libreOfficeExtension.ts";
import { sheetsScript } from "../../src/build/release/sheetsScript.ts";
import type { BenchReport } from "./report.ts";
import { showTime } from "./show.ts";

const rounds = 9;
/** The most processor time, in milliseconds, that a bundle may take before its first call. */
const most = 150;

/** What each bundle takes before it can answer its first call, in a process that has never seen it. */
export async function bench(): Promise<BenchReport> {
  const [excel, sheets, extension] = await Promise.all([
    excelAddIn(developmentUrl),
    sheetsScript(),
    libreOfficeExtension(),
  ]);
  const programs: Readonly<Record<string, string>> = {
    "functions in Excel": textOf(excel.files.get("functions.js")),
    "script in Google Sheets": textOf(sheets.files.get("Code.gs")),
    "program of the LibreOffice extension": extension.text,
  };
  const folder = mkdtempSync(join(tmpdir(), "soundfold-start-"));
  try {
    const started = Object.entries(programs).map(([bundle, text]) => {
      const file = join(folder, "program.js");
      writeFileSync(file, text);
      return { bundle, text, ...startTimes(file) };
    });
    return {
      title: "Start-up",
      rows: started.map(({ bundle, text, load, first }) => ({
        bundle,
        size: kilobytes(text.length),
        compressed: kilobytes(gzipSync(text).length),
        "read, compiled and run": showTime(load),
        "first call": first === undefined ? "" : showTime(first),
      })),
      limits: started.map(({ bundle, load }) => ({ what: `${bundle}, ms,`, measured: load, most })),
      notes: [
        `Medians of the processor time in ${rounds} new processes each, without the start of Node.js itself. The first call is FLOCKPREV(4, 20), before anything is compiled well. In a browser reading over the network comes on top; the sizes are in characters, compressed by gzip.`,
      ],
    };
  } finally {
    rmSync(folder, { recursive: true });
  }
}

const textOf = (content: string | Uint8Array | undefined): string => {
  if (content === undefined) throw new Error("the build lacks a bundle");
  return typeof content === "string" ? content : new TextDecoder().decode(content);
};

const kilobytes = (bytes: number): string => `${(bytes / 1000).toFixed(0)} kB`;

// Runs in a new process, inside a function, since the programs have names of their own: a stand-in for Excel takes the functions, and what has been spent so far is told.
const measuring = `{
const { readFileSync } = require("node:fs");
const vm = require("node:vm");
const functions = new Map();
globalThis.CustomFunctions = {
  associate: (name, work) => functions.set(name, work), Error, ErrorCode: {},
};
globalThis.require = require;
const spent = (before) => { const { user, system } = process.cpuUsage(before); return (user + system) / 1000; };
const before = process.cpuUsage();
vm.runInThisContext(readFileSync(process.argv[1], "utf8"));
const load = spent(before);
const call = functions.size > 0 ? () => functions.get("FLOCKPREV")(4, 20, {}) :
  typeof FOOT_FLOCKPREV === "function" ? () => FOOT_FLOCKPREV(4, 20) : undefined;
setTimeout(() => {
  const start = process.cpuUsage();
  const answer = call?.();
  if (call && answer !== 0.2 && answer?.basicValue !== 0.2) throw new Error("FLOCKPREV gave " + JSON.stringify(answer));
  console.log(JSON.stringify({ load, first: call && spent(start) }));
  process.exit(0);
}, 20);
}`;

interface StartTimes {
  readonly load: number;
  readonly first?: number;
}

function startTimes(file: string): StartTimes {
  const found = Array.from(
    { length: rounds },
    () => JSON.parse(execFileSync(process.execPath, ["-e", measuring, file], { encoding: "utf8" })) as StartTimes,
  );
  const first = found.flatMap((times) => (times.first === undefined ? [] : [times.first]));
  return { load: median(found.map(({ load }) => load)), ...(first.length > 0 ? { first: median(first) } : {}) };
}

const median = (numbers: readonly number[]): number =>
  [...numbers].sort((a, b) => a - b)[numbers.length >> 1] ?? Number.NaN;
