import { existsSync, readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { type Node, parse } from "acorn";
import { transformSync } from "esbuild";
import { describe, expect, it } from "vitest";

const room = "src/hosts/headless/insides";

const sources = readdirSync("src", { recursive: true, encoding: "utf8" })
  .map((name) => join("src", name))
  .filter((path) => /\.tsx?$/.test(path));

interface Part extends Node {
  readonly [name: string]: unknown;
}

const isPart = (value: unknown): value is Part =>
  typeof value === "object" && value !== null && typeof (value as Part).type === "string";

function* partsOf(part: Part): Generator<Part> {
  yield part;
  for (const value of Object.values(part))
    for (const inner of Array.isArray(value) ? value : [value]) if (isPart(inner)) yield* partsOf(inner);
}

/** The name of a member that is reached for: `_name` in `a._name`, `a["_name"]` and `const { _name } = a`. */
function memberOf(part: Part): string | undefined {
  const key = part.type === "MemberExpression" ? part.property : part.type === "Property" ? part.key : undefined;
  if (!isPart(key)) return undefined;
  if (key.type === "Identifier" && !part.computed) return String(key.name);
  return key.type === "Literal" ? String(key.value) : undefined;
}

const makesFunction = (part: unknown): boolean => isPart(part) && /Function/.test(part.type);

/** What a source does to things that are not its own. */
function reachesInto(source: string, name: string): readonly string[] {
  const { code } = transformSync(source, { loader: name.endsWith("x") ? "tsx" : "ts", jsx: "automatic" });
  const found: string[] = [];
  for (const part of partsOf(parse(code, { ecmaVersion: "latest", sourceType: "module" }) as unknown as Part)) {
    const member = memberOf(part);
    if (member !== undefined && /^_/.test(member)) found.push(`reads ${member}`);
    if (member === "prototype") found.push("reads a prototype");
    const { left, right } = part;
    if (
      part.type === "AssignmentExpression" &&
      isPart(left) &&
      left.type === "MemberExpression" &&
      makesFunction(right)
    )
      found.push(`replaces ${memberOf(left)}`);
  }
  return found;
}

/** Where objects of the engine come by, also in files that import nothing of it. */
const mayReach = ["src/hosts/headless/", "src/pages/practice/"];

const developers = readFileSync("DEVELOPERS.md", "utf8");
const [, list = ""] = developers.split("## Where the engine's insides are touched");
const rows = (list.split("\n## ")[0] ?? "")
  .split("\n")
  .filter((line) => line.startsWith("| `"))
  .map((line) => line.slice(2, -2).split(" | "));

describe("the embedded engine's insides", () => {
  it.each([
    ["const a = editor._resetTemp();", "reads _resetTemp"],
    ["const a = univer.__getInjector();", "reads __getInjector"],
    ['const a = (editor as unknown as Own)["_state"];', "reads _state"],
    ["const { _state } = editor as unknown as Own;", "reads _state"],
    ["const a = Skeleton.prototype.draw;", "reads a prototype"],
    ["alerts.showAlert = () => {};", "replaces showAlert"],
    ["alerts.get(Alerts).showAlert = function () {};", "replaces showAlert"],
  ])("are noticed in %s", (source, finding) => {
    expect(reachesInto(source, "probe.ts")).toContain(finding);
  });

  it("are not noticed where there are none", () => {
    const source = "// a._b\nconst _ = '._c'; cell.v = 1; rows.map((_, __) => __); const d = [_];";
    expect(reachesInto(source, "probe.ts")).toEqual([]);
  });

  it("are touched in one folder only", () => {
    const others = sources
      .filter((path) => !path.startsWith(room))
      .map((path) => ({ path, text: readFileSync(path, "utf8") }))
      .filter(({ path, text }) => mayReach.some((folder) => path.startsWith(folder)) || text.includes('"@univerjs/'));
    expect(others.length).toBeGreaterThan(50);
    expect(others.flatMap(({ path, text }) => reachesInto(text, path).map((what) => `${path} ${what}`))).toEqual([]);
  });

  it("stand in the list of DEVELOPERS.md, a file at least once, and nothing else does", () => {
    const files = readdirSync(room).map((name) => `${room}/${name}`);
    expect(files.length).toBeGreaterThan(10);
    const named = rows.map(([where = ""]) => where.replaceAll("`", "")).map((name) => `${room}/${name}`);
    expect(files.filter((file) => !named.includes(file))).toEqual([]);
    expect(named.filter((file) => !files.includes(file))).toEqual([]);
  });

  it.each(rows.map((row) => [row[0], row[1], row] as const))(
    "%s, %s: the list names the test that fails without it",
    (_, __, row) => {
      expect(row).toHaveLength(5);
      const tests = [...(row[3] ?? "").matchAll(/`([^`]+)` "([^"]+)"/g)];
      expect(tests.length).toBeGreaterThan(0);
      for (const [, file = "", title = ""] of tests) {
        expect(existsSync(join("tests", file)), file).toBe(true);
        expect(readFileSync(join("tests", file), "utf8")).toContain(`"${title}"`);
      }
    },
  );
});
