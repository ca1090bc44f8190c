import { execFile } from "node:child_process";
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { expect, it } from "vitest";
import { type WorstKind, worstKinds } from "./worstKinds.ts";

const repository = fileURLToPath(new URL("../../../", import.meta.url));

// What a workbook under 1 MB may take at most. The figures of a machine that does nothing else are in the docs.
const mostMs = 60_000;
const heapMb = 2000;

interface Told {
  readonly cells: Readonly<Record<string, unknown>>;
  readonly reasons: readonly string[];
}

/** In a process of its own, which is ended where it takes too long. */
function worked({ make }: WorstKind): Promise<Told> {
  const folder = mkdtempSync(join(tmpdir(), "soundfold-"));
  const file = join(folder, "kind.xlsx");
  writeFileSync(file, make());
  const given = [
    `--max-old-space-size=${heapMb}`,
    "--import",
    "tsx",
    join(repository, "tests/workbook/bounds/tryKind.ts"),
  ];
  return new Promise((resolve, reject) => {
    execFile(
      process.execPath,
      [...given, repository, file],
      { cwd: repository, timeout: mostMs, maxBuffer: 1e8 },
      (error, stdout) => {
        rmSync(folder, { recursive: true });
        if (error) reject(error);
        else resolve(JSON.parse(stdout) as Told);
      },
    );
  });
}

it.each(worstKinds.map((kind) => [kind.name, kind] as const))(
  "%s is worked out within the bounds, or left and said",
  async (_, kind) => {
    const { cells, reasons } = await worked(kind);
    const { ends } = kind;
    if (ends instanceof RegExp) expect(reasons.join("\n")).toMatch(ends);
    else
      for (const [address, value] of Object.entries(ends)) expect([address, cells[address]]).toEqual([address, value]);
  },
  90_000,
);
