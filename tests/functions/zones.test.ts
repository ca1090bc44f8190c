import { execFileSync } from "node:child_process";
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { build } from "esbuild";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { zones } from "./zones.ts";

interface Answers {
  readonly timeZone: string;
  readonly compared: number;
  readonly differing: readonly string[];
  readonly answers: string;
}

let folder: string;

beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), "soundfold-zones-"));
  // Bundled once, since each zone needs a process of its own.
  await build({
    entryPoints: [fileURLToPath(new URL("zoneAnswers.ts", import.meta.url))],
    outfile: join(folder, "zoneAnswers.mjs"),
    bundle: true,
    format: "esm",
    platform: "node",
  });
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const answersIn = (zone: string): Answers =>
  JSON.parse(
    execFileSync(process.execPath, [join(folder, "zoneAnswers.mjs")], {
      env: { ...process.env, TZ: zone },
      encoding: "utf8",
    }),
  );

describe("every function that reads dates", () => {
  let atHome: Answers;
  beforeAll(() => {
    atHome = answersIn("UTC");
  });

  it.each(zones)("gives the same serials in %s", (zone) => {
    const there = answersIn(zone);
    expect(there.timeZone).toBe(zone);
    expect(there.differing).toEqual([]);
    expect(there.compared).toBeGreaterThan(1000);
    expect(there.answers).toBe(atHome.answers);
  });
});
