import { spawnSync } from "node:child_process";
import { mkdtempSync, readdirSync, rmSync, utimesSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterEach, beforeEach, expect, it } from "vitest";
import { clearLeftovers, passingName } from "../../src/cli/clearLeftovers.ts";
import { buildWorkbook, rowsOf } from "../workbook/buildWorkbook.ts";
import { runSoundfold } from "./runSoundfold.ts";

let folder: string;
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), "soundfold-leftovers-"));
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

const old = new Date(Date.now() - 3_600_000);
const leave = (name: string, at = old): string => {
  writeFileSync(join(folder, name), "half a workbook");
  utimesSync(join(folder, name), at, at);
  return name;
};

/** The number of a process that has ended. */
const ended = (): number => spawnSync(process.execPath, ["-e", ""]).pid;

it("a later run removes what a killed one left, and says so", async () => {
  const left = leave(passingName("out.xlsx", ended()));
  writeFileSync(join(folder, "farm.xlsx"), buildWorkbook({ sheets: [{ name: "One", rows: rowsOf({ A1: "=1+1" }) }] }));
  const { code, output } = await runSoundfold(["recalc", "farm.xlsx", "out.xlsx"], folder);
  expect(code).toBe(0);
  expect(output).toContain(`Removed what a run that was cut off had left behind: ${left}`);
  expect(readdirSync(folder).sort()).toEqual(["farm.xlsx", "out.xlsx"]);
});

it("leaves every file alone that is not surely its own", async () => {
  const gone = ended();
  const kept = [
    leave(passingName("out.xlsx", process.ppid)),
    leave(passingName("other.xlsx", gone)),
    leave(passingName("out.xlsx", gone), new Date()),
    leave(`out.xlsx.${gone}.part`),
    leave(`.out.xlsx.0${gone}.part`),
    leave(`.out.xlsx.${gone}.part.bak`),
    leave(`.out.xlsx.${gone}x.part`),
    leave(".out.xlsx..part"),
    leave(".out.xlsx.part"),
    leave(`.out.xlsx.-${gone}.part`),
    leave("out.xlsx"),
  ];
  expect(await clearLeftovers(join(folder, "out.xlsx"))).toEqual([]);
  expect(readdirSync(folder).sort()).toEqual(kept.sort());
});

it("is no reason to fail when the folder cannot be looked into", async () => {
  expect(await clearLeftovers(join(folder, "nowhere", "out.xlsx"))).toEqual([]);
});
