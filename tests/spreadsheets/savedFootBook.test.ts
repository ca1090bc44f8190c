import { execFile } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { basename, join } from "node:path";
import { promisify } from "node:util";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { readFootBook } from "../../src/workbooks/collate/readFootBook.ts";
import { calcProgram } from "./calcProgram.ts";

const sample = "samples/flock-foot-book.xlsx";
const run = promisify(execFile);

type Save = (file: string, folder: string) => Promise<unknown>;

// Without the extension, as at a farm office that has not installed it.
const inLibreOffice =
  (version: "7.4" | "25.2"): Save =>
  (file, folder) => {
    const profile = `-env:UserInstallation=file://${folder}/profile`;
    return run(calcProgram(version), [profile, "--headless", "--convert-to", "xlsx", "--outdir", folder, file]);
  };

const script = "import sys, openpyxl; openpyxl.load_workbook(sys.argv[1]).save(sys.argv[2])";

const programs: Readonly<Record<string, Save>> = {
  "LibreOffice 7.4": inLibreOffice("7.4"),
  "LibreOffice 25.2": inLibreOffice("25.2"),
  openpyxl: (file, folder) => run("/usr/bin/python3", ["-c", script, file, join(folder, basename(file))]),
};

describe.each(Object.entries(programs))("the Flock foot book, saved again by %s", (_, save) => {
  let folder: string;
  let saved: Buffer;

  beforeAll(async () => {
    folder = mkdtempSync(join(tmpdir(), "soundfold-foot-book-"));
    await save(sample, folder);
    saved = readFileSync(join(folder, basename(sample)));
  });
  afterAll(() => rmSync(folder, { recursive: true, force: true }));

  it("is another file", () => {
    expect(saved.equals(readFileSync(sample))).toBe(false);
  });

  it("gives collate the same flock", () => {
    expect(readFootBook(saved)).toEqual(readFootBook(readFileSync(sample)));
  });
});
