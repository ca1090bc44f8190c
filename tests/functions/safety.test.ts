import { existsSync, readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { describe, expect, it } from "vitest";
import { catalogue } from "../../functions/catalogue.ts";

const fromRoot = (path: string): string => fileURLToPath(new URL(`../../${path}`, import.meta.url));
const page = readFileSync(fromRoot("docs/safety.md"), "utf8");

/** The cells of every row of every table, without the heading rows. */
const rows = page
  .split("\n")
  .filter((line) => line.startsWith("| ") && !line.startsWith("| ---"))
  .map((line) =>
    line
      .slice(1, -1)
      .split("|")
      .map((cell) => cell.trim()),
  )
  .filter(([first]) => first !== "function" && first !== "guard");

const functionRows = rows.filter((cells) => cells.length === 4);
const generalRows = rows.filter((cells) => cells.length === 2);

interface NamedTest {
  readonly file: string;
  readonly title: string;
}

const testsIn = (cell: string): readonly NamedTest[] =>
  cell.split("<br>").map((entry) => {
    const match = /^`(tests\/[^`]+\.test\.ts)` "(.+)"$/.exec(entry);
    if (!match) throw new Error(`docs/safety.md: ${entry} does not name a test as \`file\` "title"`);
    return { file: match[1] as string, title: match[2] as string };
  });

const tests = rows.flatMap((cells) => testsIn(cells.at(-1) as string));

/** How a test with this title begins in its file; a title is found whole, and only where it is a test that runs. */
function startsTest(source: string, title: string): boolean {
  const literal = title.replace(/[.*+?^${}()|[\]\\]/g, "\\$&");
  const quoted = `(?:"${literal}"|'${literal}'|\`${literal}\`)`;
  const plain = new RegExp(`\\b(?:it|test)\\(\\s*${quoted}`);
  // The title of a test over many cases stands after the cases: ])("title", …
  const each = new RegExp(`\\)\\(\\s*${quoted}\\s*,`);
  return plain.test(source) || (/\b(?:it|test)\.each\b/.test(source) && each.test(source));
}

describe("docs/safety.md", () => {
  it("has one row for each function that carries a caution", () => {
    const named = functionRows.map(([name]) => name);
    expect(new Set(named).size).toBe(named.length);
    const cautioned = catalogue.filter(({ caution }) => caution !== undefined).map(({ name }) => name);
    expect(cautioned.length).toBeGreaterThan(0);
    expect(cautioned.filter((name) => !named.includes(name))).toEqual([]);
  });

  it("names only functions that there are, each with its harm and its guard in words", () => {
    const names = catalogue.map(({ name }) => name);
    for (const [name = "", harm = "", guard = ""] of functionRows) {
      expect(names).toContain(name);
      for (const words of [harm, guard]) expect(words).toMatch(/^[A-Z"].{20,}\.$/);
    }
    expect(functionRows.length + generalRows.length).toBe(rows.length);
    expect(generalRows.length).toBeGreaterThan(0);
  });

  it.each(tests.map(({ file, title }) => [file, title] as const))("rests on %s: %s", (file, title) => {
    expect([file, existsSync(fromRoot(file))]).toEqual([file, true]);
    const source = readFileSync(fromRoot(file), "utf8");
    expect(startsTest(source, title) ? title : `${file} holds no test "${title}"`).toBe(title);
    expect(source).not.toMatch(/\.(?:skip|todo|only|fails)\b/);
  });

  it("would notice a test that is renamed, taken out, or only spoken of", () => {
    expect(startsTest('it("holds", () => {})', "holds")).toBe(true);
    expect(startsTest('it("holds more", () => {})', "holds")).toBe(false);
    expect(startsTest('// it used to say "holds"', "holds")).toBe(false);
    expect(startsTest('it.each([1])("refuses %s", () => {})', "refuses %s")).toBe(true);
    expect(startsTest('it.skip("holds", () => {})', "holds")).toBe(false);
  });
});
