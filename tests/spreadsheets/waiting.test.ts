import { execFileSync } from "node:child_process";
import { cpSync, mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { afterAll, beforeAll, describe, expect, it } from "vitest";

const python = process.env.SOUNDFOLD_PYTHON ?? "/usr/bin/python3";

/** In the place of Calc: what the extension imports from it, and calls one after the other. */
const calc = `
import json, sys, time, types
unohelper = types.ModuleType("unohelper")
unohelper.Base = object
unohelper.ImplementationHelper = lambda: types.SimpleNamespace(addImplementation=lambda *given: None)
sys.modules["unohelper"] = unohelper
import soundfold
said = []
for call in json.load(sys.stdin):
    started = time.monotonic()
    try:
        answer = soundfold.RUNNER.ask(call)
    except soundfold.CannotRun as reason:
        answer = str(reason)
    said.append([answer, time.monotonic() - started])
print(json.dumps(said))
`;

// Answers each line with how many it has had; is silent at "hang", reads nothing more at "deaf", and goes at "end".
const program = `
let lines = 0;
const given = require("node:readline").createInterface({ input: process.stdin });
given.on("close", () => process.exit(0));
given.on("line", (line) => {
  lines += 1;
  const [word] = JSON.parse(line);
  if (word === "end") process.exit(3);
  if (word === "deaf") given.pause();
  else if (word !== "hang") console.log(JSON.stringify({ cells: [[lines]] }));
});
setInterval(() => undefined, 1000);
`;

let folder: string;
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), "soundfold-waiting-"));
  cpSync(
    fileURLToPath(new URL("../../src/hosts/libreoffice/soundfold.py", import.meta.url)),
    join(folder, "soundfold.py"),
  );
  writeFileSync(join(folder, "functions.json"), '{"service":"x","oldestNode":[20,19],"functions":[]}');
  writeFileSync(join(folder, "answerLines.cjs"), program);
  writeFileSync(join(folder, "calc.py"), calc);
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

function asked(...calls: readonly (readonly unknown[])[]): readonly (readonly [unknown, number])[] {
  const env = { ...process.env, SOUNDFOLD_NODE: process.execPath, SOUNDFOLD_LONGEST_WAIT: "3" };
  const out = execFileSync(python, [join(folder, "calc.py")], {
    env,
    input: JSON.stringify(calls),
    encoding: "utf8",
    stdio: ["pipe", "pipe", "ignore"],
    timeout: 120_000,
  });
  return JSON.parse(out) as [unknown, number][];
}

const stopped = /^Soundfold gave no answer within 3 seconds and was stopped\. Enter the formula again;/;

describe("Calc waits for the program", () => {
  it("so long and no longer, says so, and starts it again for the next formula", () => {
    const [first, hung, next, after] = asked(["one"], ["hang"], ["two"], ["three"]);
    expect(first?.[0]).toEqual({ cells: [[1]] });
    expect(hung?.[0]).toMatch(stopped);
    expect(hung?.[1]).toBeGreaterThanOrEqual(3);
    // A new process counts from the start.
    expect([next?.[0], after?.[0]]).toEqual([{ cells: [[1]] }, { cells: [[2]] }]);
  });

  it("so long too where it reads no more of what it is given", () => {
    const [, deaf, next] = asked(["one"], ["deaf", "x".repeat(5_000_000)], ["two"]);
    expect(deaf?.[0]).toMatch(stopped);
    expect(next?.[0]).toEqual({ cells: [[1]] });
  });

  it("not at all once it has ended twice", () => {
    const [, ended, next] = asked(["one"], ["end"], ["two"]);
    expect(ended?.[0]).toMatch(/ended without an answer \(code 3\)/);
    expect(next?.[0]).toBe(ended?.[0]);
    expect(next?.[1]).toBeLessThan(3);
  });
});
