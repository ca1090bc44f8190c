import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { Doubt } from "../../src/cells/doubt.ts";
import { tagKey } from "../../src/core/words/tagKey.ts";

/** One example of a doc comment: a call, and what it is said to give. */
interface DocExample {
  readonly file: string;
  readonly name: string;
  readonly call: string;
  readonly gives: string;
}

const comments = /\/\*\*((?:(?!\*\/)[\s\S])*)\*\/\n(?:\/\/.*\n)*export (?:const|function\*?|class) (\w+)/g;

const sourceFiles = ["src/cells", "src/core", "src/writing"].flatMap((folder) =>
  readdirSync(folder, { recursive: true, encoding: "utf8" })
    .filter((name) => name.endsWith(".ts"))
    .map((name) => join(folder, name)),
);

function examplesIn(file: string): readonly DocExample[] {
  return [...readFileSync(file, "utf8").matchAll(comments)].flatMap(([, comment = "", name = ""]) => {
    const [, text = ""] = comment.split("@example");
    const lines = text.replace(/^[ \t]*\* ?/gm, "").trim();
    // A call may run over lines, and so may what it gives: "// → [1," and then "//    2]".
    return [...lines.matchAll(/((?:(?!\/\/)[\s\S])+?)\s*\/\/ (.*(?:\n\/\/.*)*)/g)].map(([, call = "", gives = ""]) => ({
      file,
      name,
      call: call.trim(),
      gives: gives.replace(/\n\/\/\s*/g, " "),
    }));
  });
}

const token = /"(?:[^"\\]|\\.)*"|'(?:[^'\\]|\\.)*'|-?\d[\d_]*(?:\.\d+)?…?|…/g;

/** What is said, as an expression: "…" stands for more digits, for more text, or for what is not said. */
const asExpression = (said: string): string =>
  said
    .replace(/\s+\([^()]*\)$/, "")
    .replaceAll("−", "-")
    .replace(/, …(?= [}\]])/g, "")
    .replace(token, (part) => {
      if (/^["']/.test(part)) return part.includes("…") ? `startsWith(${part.replace(/…[^"']*/, "")})` : part;
      if (part === "…") return "anything";
      const decimals = part.endsWith("…") ? part.length - 2 - part.indexOf(".") - 1 : 12;
      return `near(${part.replace("…", "")}, ${decimals})`;
    });

const helpers = {
  near: (value: number, decimals: number) => expect.closeTo(value, decimals),
  startsWith: (text: string) => expect.stringMatching(new RegExp(`^${text.replace(/[\\^$.*+?()[\]{}|]/g, "\\$&")}`)),
  anything: expect.anything(),
  a: { key: "A", shown: "041" },
  b: { key: "B", shown: "042" },
  tag: (shown: string) => ({ key: tagKey(shown), shown }),
  doubt: new Doubt("tags", { what: "it cannot be read", mend: "enter it again" }),
  rows: { sale: (index: number) => index + 1, treatment: (index: number) => index + 1 },
};

function evaluated(expression: string, names: Readonly<Record<string, unknown>>): unknown {
  return new Function(...Object.keys(names), `return (${expression});`)(...Object.values(names));
}

const examples = sourceFiles.flatMap(examplesIn);

describe("examples in doc comments", () => {
  it.each(examples.map((example) => [example.call, example] as const))("%s", async (_, { file, name, call, gives }) => {
    const module: Record<string, unknown> = await import(/* @vite-ignore */ `../../${file}`);
    const found = (): unknown => evaluated(call, { ...helpers, [name]: module[name] });
    const [, thrown] = /^→ throws "([^"…]*)/.exec(gives) ?? [];
    if (thrown !== undefined) return expect(found).toThrow(thrown);
    expect(gives).toMatch(/^→ /);
    const said = evaluated(asExpression(gives.slice(2)), helpers);
    if (gives.includes(", … }")) expect(found()).toMatchObject(said as object);
    else expect(found()).toEqual(said);
  });

  it("are found", () => expect(examples.length).toBeGreaterThan(100));
});
