import { execFile } from "node:child_process";
import { readFileSync, rmSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { promisify } from "node:util";
import { beforeAll, describe, expect, test } from "vitest";
import { openWorkbook } from "../../src/workbook/openWorkbook.ts";
import { type Ended, runSoundfold, soundfold } from "./runSoundfold.ts";

const root = fileURLToPath(new URL("../..", import.meta.url));

describe("start", () => {
  let ended: Ended;
  beforeAll(async () => {
    ended = await runSoundfold(["start"], root);
  });

  test("ends well", () => {
    expect(ended.errors).toBe("");
    expect(ended.code).toBe(0);
  });

  test("prints what a farmer asks", () => {
    expect(ended.output).toContain("The flock is invented.");
    expect(ended.output).toMatch(/Share lame at the latest gathers: \d\.\d %\n.*: \d\.\d % to \d\.\d %/);
    for (const question of [
      "Which group is worst now",
      "What makes them lame",
      "Who is not clear today",
      "Can they go to the sale",
      "Whom to look at this week",
      "Whom to keep apart at the next housing",
      "Who was lame again and again",
      "How long lame sheep wait for treatment",
      "How fast they get sound after treatment",
      "How much medicine was used in the year",
      "What to mend in the case records",
    ])
      expect(ended.output).toContain(question);
    expect(ended.output).toMatch(/footrot +\d+ +\d+\.\d %/);
    expect(ended.output).toMatch(/days overdue/);
  });

  test("names each cell that must be mended", () => {
    expect(ended.output).toMatch(/2 cells end in an error:/);
    expect(ended.output).toMatch(/Cases!S\d+ +#VALUE! +text: "sore" is not a lesion/);
  });

  test("names its output, a workbook that opens", () => {
    const named = /The workbook with these answers: (.+)\n/.exec(ended.output)?.[1];
    expect(named).toBe(join("samples", "farm-records-worked-out.xlsx"));
    const sheets = openWorkbook(readFileSync(join(root, named ?? ""))).sheets.map(({ name }) => name);
    expect(sheets).toEqual(["Start", "Settings", "Gathers", "Cases", "Answers", "Lists", "Record check"]);
  });

  test("saves its workbook for a reader who takes the first line only", async () => {
    const pipe = `${process.execPath} ${soundfold} start | head -n 1; exit \${PIPESTATUS[0]}`;
    const saved = join(root, "samples/farm-records-worked-out.xlsx");
    rmSync(saved);
    const { stdout, stderr } = await promisify(execFile)("bash", ["-c", pipe], { cwd: root });
    expect(stdout).toBe("Sheep foot health of a flock over one year. The flock is invented.\n");
    expect(stderr).toBe("");
    expect(openWorkbook(readFileSync(saved)).sheets).toHaveLength(7);
  });
});
