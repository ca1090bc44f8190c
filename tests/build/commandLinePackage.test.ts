import { execFile, spawn } from "node:child_process";
import { copyFileSync, existsSync, mkdirSync, mkdtempSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { version } from "../../functions/version.ts";
import { commandTarball } from "../../src/build/release/commandTarball.ts";
import { openWorkbook } from "../../src/workbook/openWorkbook.ts";

// Installs the tarball as a person does, so the registry must be within reach, as it is for `npm ci`.
const folder = mkdtempSync(join(tmpdir(), "soundfold-npm-"));
const clean = join(folder, "clean");
afterAll(() => rmSync(folder, { recursive: true }));

const run = (command: string, given: readonly string[], cwd: string): Promise<string> =>
  new Promise((resolve, reject) => {
    const options = { cwd, shell: process.platform === "win32", maxBuffer: 50_000_000 };
    execFile(command, given, options, (error, output, errors) =>
      error ? reject(new Error(`${error.message}\n${errors}`)) : resolve(output),
    );
  });

/** What the installed command prints up to some words; then it is ended, whatever it would do next. */
const saidUpTo = (words: string, command: string): Promise<string> =>
  new Promise((resolve, reject) => {
    const program = join(clean, "node_modules", "soundfold", "dist", "cli", "soundfold.js");
    const child = spawn(process.execPath, [program, command], { cwd: clean, stdio: ["ignore", "pipe", "inherit"] });
    let said = "";
    child.stdout.setEncoding("utf8").on("data", (part: string) => {
      said += part;
      if (said.includes(words)) child.kill();
    });
    child.on("close", () => (said.includes(words) ? resolve(said) : reject(new Error(`it ended with: ${said}`))));
  });

describe("npm pack", () => {
  let listed: string;
  const tarball = join(folder, `soundfold-${version}.tgz`);

  beforeAll(async () => {
    mkdirSync(clean);
    // As on a machine where new files are nobody else's to read.
    const usual = process.umask(0o077);
    try {
      listed = await run("npm", ["pack", "--silent", "--json", "--pack-destination", folder], process.cwd());
    } finally {
      process.umask(usual);
    }
    await run("npm", ["install", "--silent", "--prefer-offline", "--no-audit", "--no-fund", tarball], clean);
  }, 600_000);

  it("is the tarball that the release holds, byte for byte", () => {
    const files = ["soundfold.js", "spreadsheet.cjs", "soundfold.html", "licences.txt"].map(
      (name) => [name, readFileSync(join("dist/cli", name))] as const,
    );
    expect(readFileSync(tarball).equals(commandTarball(new Map(files)))).toBe(true);
  });

  it("lets everyone read its files, whatever the machine it was made on", () => {
    const [{ files } = { files: [] }] = JSON.parse(listed.slice(listed.indexOf("["))) as {
      files: { path: string; mode: number }[];
    }[];
    const modes = new Map(files.map(({ path, mode }) => [path, mode.toString(8)]));
    expect(modes.size).toBeGreaterThan(4);
    for (const [path, mode] of modes) expect([path, mode]).toEqual([path, path.endsWith(".js") ? "755" : "644"]);
  });

  it("gives a command that works out a workbook in a clean folder", async () => {
    copyFileSync(join("samples", "farm-records.xlsx"), join(clean, "flock.xlsx"));
    const said = await run("npx", ["--no-install", "soundfold", "recalc", "flock.xlsx"], clean);
    expect(said).toContain("Saved as flock-worked-out.xlsx");
    expect(said).toMatch(/\d+ formulas worked out; with .*FOOT\.FLOCKPREV/);
    const names = (path: string) => openWorkbook(readFileSync(path)).sheets.map(({ name }) => name);
    expect(names(join(clean, "flock-worked-out.xlsx"))).toEqual(names(join("samples", "farm-records.xlsx")));
  }, 300_000);

  it("puts the farm's own book into the page that is one file", async () => {
    const said = await run("npx", ["--no-install", "soundfold", "template", "farm", "--page"], clean);
    expect(said).toContain("flock-foot-book.html");
    const page = readFileSync(join(clean, "flock-foot-book.html"), "utf8");
    const [, book = ""] = /data-book="flock-foot-book\.xlsx" data-own>([^<]+)</.exec(page) ?? [];
    expect(openWorkbook(Buffer.from(book, "base64")).sheets.map(({ name }) => name)).toContain("May they go");
  }, 300_000);

  it("leaves the invented flock's answers where the person is, not inside the installed package", async () => {
    const said = await saidUpTo("The workbook with these answers", "start");
    expect(said).toContain("The flock is invented.");
    expect(existsSync(join(clean, "soundfold-sample-worked-out.xlsx"))).toBe(true);
  }, 300_000);

  it("brings the licences of what is bundled into the command", () => {
    const licences = readFileSync(join(clean, "node_modules", "soundfold", "dist", "cli", "licences.txt"), "utf8");
    for (const name of ["date-fns", "fflate", "saxes", "xmlchars"])
      expect(licences).toMatch(new RegExp(`^${name} \\d[\\d.]+ \\(\\w+\\)$`, "m"));
  });
});
