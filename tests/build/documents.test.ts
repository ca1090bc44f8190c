import { existsSync, readdirSync, readFileSync, statSync } from "node:fs";
import { dirname, join, normalize } from "node:path";
import { describe, expect, test } from "vitest";
import { catalogue } from "../../functions/catalogue.ts";
import type { Command } from "../../src/cli/command.ts";
import { bringCommand } from "../../src/cli/commands/bringCommand.ts";
import { collateCommand } from "../../src/cli/commands/collateCommand.ts";
import { compareCommand } from "../../src/cli/commands/compareCommand.ts";
import { functionsCommand } from "../../src/cli/commands/functionsCommand.ts";
import { recalcCommand } from "../../src/cli/commands/recalcCommand.ts";
import { startCommand } from "../../src/cli/commands/startCommand.ts";
import { templateCommand } from "../../src/cli/commands/templateCommand.ts";
import type { Parameter } from "../../src/reading/parameter.ts";

const inFolder = (folder: string): string[] =>
  readdirSync(folder, { recursive: true, encoding: "utf8" }).map((name) => join(folder, name));

const documents = [...readdirSync("."), ...inFolder("docs"), ...inFolder("src/build/methods/pages")]
  .filter((path) => path.endsWith(".md"))
  .map((path) => ({ path, text: readFileSync(path, "utf8") }));

const withoutCode = (text: string): string => text.replaceAll(/^```[\s\S]*?^```/gm, "").replaceAll(/`[^`\n]*`/g, "");

/** What stands in code spans and blocks, a line each. */
const codeIn = (text: string): string[] => [
  ...[...text.matchAll(/^```\w*\n([\s\S]*?)^```/gm)].flatMap(([, block = ""]) => block.split("\n")),
  ...[...text.replaceAll(/^```[\s\S]*?^```/gm, "").matchAll(/`([^`\n]+)`/g)].map(([, span = ""]) => span),
];

const slug = (heading: string): string =>
  heading
    .toLowerCase()
    .replaceAll(/[^\p{L}\p{N} _-]/gu, "")
    .replaceAll(" ", "-");

const slugsOf = (path: string): string[] =>
  [...readFileSync(path, "utf8").matchAll(/^#+ (.+)$/gm)].map(([, heading = ""]) => slug(heading));

/** The pages of the methods are written into docs/methods, and their links count from there. */
const folderOf = (path: string): string => dirname(path).replace(/^src\/build\/methods\/pages/, "docs/methods");

function deadLinks({ path, text }: (typeof documents)[number]): string[] {
  const targets = [...withoutCode(text).matchAll(/\]\(([^)\s]+)\)/g)].map(([, target = ""]) => target);
  return targets
    .filter((target) => !/^(?:https?|mailto):/.test(target))
    .filter((target) => {
      const [file = "", heading] = target.split("#");
      const found = file === "" ? path : normalize(join(folderOf(path), decodeURI(file)));
      if (found.startsWith("..") || !existsSync(found)) return true;
      return heading !== undefined && (statSync(found).isDirectory() || !slugsOf(found).includes(heading));
    });
}

describe("every Markdown file", () => {
  test("is looked at", () => {
    expect(documents.map(({ path }) => path)).toEqual(
      expect.arrayContaining(["README.md", "DEVELOPERS.md", "docs/install/excel.md", "docs/functions/CLEARDATE.md"]),
    );
  });

  test.each(documents)("$path links to what is there", (document) => {
    expect(deadLinks(document)).toEqual([]);
  });
});

test("every picture is shown on a page", () => {
  const shown = documents.flatMap(({ path, text }) =>
    [...text.matchAll(/\]\(([^)\s]+)\)/g)].map(([, target = ""]) => normalize(join(folderOf(path), target))),
  );
  const pictures = inFolder("docs").filter((path) => /\.(?:png|svg|jpe?g|gif|webp)$/.test(path));
  expect(pictures.length).toBeGreaterThan(1);
  expect(pictures.filter((path) => !shown.includes(path))).toEqual([]);
});

describe("commands in the documents", () => {
  const { scripts } = JSON.parse(readFileSync("package.json", "utf8")) as { scripts: Record<string, string> };
  const lines = documents.flatMap(({ path, text }) => codeIn(text).map((line) => ({ path, line })));
  const quoted = (pattern: RegExp) =>
    lines.flatMap(({ path, line }) =>
      [...line.matchAll(pattern)].map((match) => ({ path, line, word: match[1] ?? match[0] })),
    );

  test("npm scripts are in package.json", () => {
    const named = quoted(/npm (?:run )?((?<=run )[\w:]+|start|test)/g);
    expect(named.length).toBeGreaterThan(20);
    expect(named.filter(({ word }) => !Object.hasOwn(scripts, word))).toEqual([]);
  });

  test("npm scripts that a person runs are in DEVELOPERS.md", () => {
    const developers = readFileSync("DEVELOPERS.md", "utf8");
    const calledByNpm = ["start", "test", "prepack"];
    const unnamed = Object.keys(scripts).filter(
      (script) => !calledByNpm.includes(script) && !developers.includes(`\`npm run ${script}\``),
    );
    expect(unnamed).toEqual([]);
  });

  test("files named in code are there", () => {
    const named = quoted(
      /(?<![\w/.-])((?:src|tests|functions|docs|samples|manifest|\.ci)\/[\w./-]*|biome\.json|package\.json)(?![\w<*])/g,
    );
    expect(named.length).toBeGreaterThan(10);
    expect(named.filter(({ word }) => !existsSync(word))).toEqual([]);
  });

  test("the soundfold command knows each call, with its options", () => {
    const commands: readonly Command[] = [
      recalcCommand,
      templateCommand,
      bringCommand,
      collateCommand,
      compareCommand,
      functionsCommand,
      startCommand,
    ];
    const calls = quoted(/(?:^|npx )soundfold ([^-].*)$/g);
    expect(calls.length).toBeGreaterThan(5);
    for (const { path, word } of calls) {
      const [name = "", ...rest] = word.split(" ");
      const command = commands.find((candidate) => candidate.name === name);
      expect(command?.name, `${path}: ${word}`).toBe(name);
      for (const option of rest.filter((part) => part.startsWith("--") && part !== "--help"))
        expect(command?.takes, `${path}: ${word}`).toContain(option);
    }
  });
});

describe("formulas in the documents", () => {
  const formulas = documents.flatMap(({ path, text }) =>
    codeIn(text).flatMap((line) =>
      [...line.matchAll(/=FOOT[._]([A-Z]+)\((.*)\)/g)].map(([, name = "", typed = ""]) => ({
        path,
        line,
        name,
        typed,
      })),
    ),
  );

  test("name functions that there are, with as many arguments as they take", () => {
    expect(formulas.length).toBeGreaterThan(catalogue.length);
    for (const { path, line, name, typed } of formulas) {
      if (name === "NAME" || typed === "…") continue;
      const definition = catalogue.find((candidate) => candidate.name === name);
      expect(definition?.name, `${path}: ${line}`).toBe(name);
      const parameters: Parameter<unknown>[] = Object.values(definition?.parameters ?? {});
      const given = topLevelParts(typed);
      expect(given, `${path}: ${line}`).toBeLessThanOrEqual(parameters.length);
      // A page shows what is refused, too, such as a call that leaves out what it must not.
      if (path.startsWith("docs/functions/")) continue;
      expect(given, `${path}: ${line}`).toBeGreaterThanOrEqual(parameters.filter(({ optional }) => !optional).length);
    }
  });
});

/** How many arguments are typed, for those without brackets of an optional one. */
function topLevelParts(typed: string): number {
  if (typed.trim() === "") return 0;
  const bare = typed.replaceAll(/"[^"]*"/g, "").replaceAll(/\([^()]*\)/g, "");
  return bare.split(/[,;]/).length;
}
