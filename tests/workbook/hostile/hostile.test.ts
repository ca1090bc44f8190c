import { execFile } from "node:child_process";
import { fileURLToPath } from "node:url";
import { beforeAll, describe, expect, it } from "vitest";
import { corpus } from "./corpus.ts";

interface Ended {
  readonly name: string;
  readonly ms: number;
  readonly sentence?: string;
  readonly answers?: Readonly<Record<string, unknown>>;
  readonly fault?: string;
}

const inRepository = (path: string): string => fileURLToPath(new URL(`../../../${path}`, import.meta.url));
/** A quarter of what a small computer has. */
const heapMb = 1500;
// Generous, since other tests keep the processors busy; each takes a second or two on an idle machine.
const mostMs = 60_000;

const ended = new Map<string, Ended>();
let mostMemoryKb = Number.NaN;
let lastWords = "";

/** The whole corpus in one process with little memory: a file that takes it down leaves all later ones without an end. */
beforeAll(async () => {
  const given = [
    `--max-old-space-size=${heapMb}`,
    "--import",
    "tsx",
    inRepository("tests/workbook/hostile/tryCorpus.ts"),
  ];
  const output = await new Promise<string>((resolve) => {
    execFile(process.execPath, given, { cwd: inRepository("."), timeout: 400_000 }, (error, stdout, stderr) => {
      lastWords = error ? `${error.message} ${stderr}`.slice(-1000) : "";
      resolve(stdout);
    });
  });
  for (const line of output.split("\n").filter(Boolean)) {
    const told = JSON.parse(line) as Ended & { readonly mostMemoryKb?: number };
    if (told.mostMemoryKb === undefined) ended.set(told.name, told);
    else mostMemoryKb = told.mostMemoryKb;
  }
}, 420_000);

describe("a file made to do harm ends in an answer or one sentence", () => {
  it.each(corpus.map((file) => [file.name, file] as const))("%s", (name, { endsIn }) => {
    const end = ended.get(name);
    if (!end) throw new Error(`it did not come to an end. ${lastWords}`);
    expect(end.fault).toBeUndefined();
    expect(end.ms).toBeLessThan(mostMs);
    if (!(endsIn instanceof RegExp)) {
      expect(end.answers).toEqual(endsIn);
      return;
    }
    expect(end.sentence).toMatch(endsIn);
    expect(end.sentence).not.toContain("\n");
  });

  it("has a name of its own for each file", () => {
    expect(new Set(corpus.map(({ name }) => name)).size).toBe(corpus.length);
  });

  it("keeps within the memory of a small computer", () => {
    expect(lastWords).toBe("");
    expect(mostMemoryKb).toBeLessThan(heapMb * 1024);
  });
});
