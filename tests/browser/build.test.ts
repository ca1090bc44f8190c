import { spawnSync } from "node:child_process";
import { mkdtempSync, readdirSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { describe, expect, inject, it } from "vitest";
import { catalogue } from "../../functions/catalogue.ts";
import { templateList } from "../../src/pages/templateList.ts";
import { addInUrl } from "./buildAddIn.ts";

function build(baseUrl: string) {
  const folder = mkdtempSync(join(tmpdir(), "soundfold-build-"));
  const given = ["run", "--silent", "build", "--", "--env", `baseUrl=${baseUrl}`, "--output-path", folder];
  const { status, stderr } = spawnSync("npm", given, { encoding: "utf8", shell: process.platform === "win32" });
  const names = readdirSync(folder, { recursive: true, withFileTypes: true });
  const files = names
    .filter((entry) => entry.isFile())
    .map((entry) => join(entry.parentPath, entry.name))
    .map((path) => [path.slice(folder.length + 1), readFileSync(path)] as const);
  rmSync(folder, { recursive: true });
  return { status, stderr, files: new Map(files) };
}

describe("npm run build", () => {
  it("gives the same bytes each time, with nothing missing", () => {
    const { status, files } = build(addInUrl);
    expect(status).toBe(0);
    const names = [...files.keys()].map((name) => name.replace(/\.[0-9a-f]{8}\.js$/, ".(its content).js"));
    expect(names.sort()).toEqual([
      "cautions.(its content).js",
      "explain.(its content).js",
      "formula.(its content).js",
      "functions.js",
      "functions.json",
      "health.(its content).js",
      "icons/icon-16.png",
      "icons/icon-32.png",
      "icons/icon-64.png",
      "icons/icon-80.png",
      "index.html",
      "manifest.xml",
      "privacy.html",
      "records.(its content).js",
      "shared.(its content).js",
      "site.js",
      "support.html",
      "taskpane.css",
      "taskpane.html",
      "taskpane.js",
      ...templateList.map(({ file }) => `templates/${file}`).sort(),
      "workbooks.(its content).js",
    ]);
    for (const [name, bytes] of files)
      expect(bytes.equals(readFileSync(join(inject("addInFolder"), name))), name).toBe(true);
  });

  it("refuses an address that Excel would refuse, in one sentence, and writes nothing", () => {
    const { status, stderr, files } = build("http://example.org");
    expect(status).toBe(2);
    expect(stderr).toBe(
      'baseUrl "http://example.org" is neither https nor on localhost; give an address such as https://example.org/soundfold.\n',
    );
    expect(files.size).toBe(0);
  });

  it("brings to a reader none of the statistics", () => {
    // The high half of ln 2, which every logarithm and power of the core is worked out with.
    const holdsLogarithm = (name: string) =>
      readFileSync(join(inject("addInFolder"), name), "utf8").includes("6931471803691238");
    expect(["functions.js", "taskpane.js"].map(holdsLogarithm)).toEqual([true, false]);
  });

  it("brings to a sheet nothing that only readers need", () => {
    const bundle = readFileSync(join(inject("addInFolder"), "functions.js"), "utf8");
    const left = (texts: readonly string[]) => texts.filter((text) => bundle.includes(text));
    expect(left(catalogue.map(({ name }) => `"${name}"`))).toHaveLength(catalogue.length);
    expect(left(catalogue.flatMap(({ summary, notes }) => [summary, ...notes]))).toEqual([]);
  });
});
