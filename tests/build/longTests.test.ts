import { readdirSync, readFileSync } from "node:fs";
import { basename } from "node:path";
import { expect, it } from "vitest";
import config from "../../vitest.config.ts";
import { longTests } from "../longTests.ts";

const files = readdirSync("tests", { recursive: true, encoding: "utf8" }).map((path) => `tests/${path}`);
const { scripts } = JSON.parse(readFileSync("package.json", "utf8")) as { scripts: Record<string, string> };

it("every long test is there, so that one that has moved does not come back into the short ones unseen", () => {
  const isThere = (pattern: string) =>
    pattern.includes("*")
      ? files.some((path) => basename(path) === basename(pattern) && path.startsWith(pattern.split("*")[0] ?? ""))
      : files.includes(pattern);
  expect(longTests.filter((pattern) => !isThere(pattern))).toEqual([]);
});

it("every project runs in one of the two commands, and every folder of tests in a project", () => {
  const projects = (config.test?.projects ?? []) as { readonly test: { readonly name: string; include: string[] } }[];
  const named = ["test", "test:long"].flatMap((script) =>
    [...(scripts[script] ?? "").matchAll(/--project (\w+)/g)].map(([, name]) => name),
  );
  expect(named.sort()).toEqual(projects.map(({ test }) => test.name).sort());
  const included = projects.flatMap(({ test }) => test.include.map((pattern) => pattern.split("/")[1]));
  const folders = files.filter((path) => path.endsWith(".test.ts")).map((path) => path.split("/")[1]);
  // Those that drive LibreOffice have a configuration of their own.
  expect([...new Set(folders)].filter((folder) => folder !== "spreadsheets" && !included.includes(folder))).toEqual([]);
});

it("the machine that runs everything runs both", () => {
  const run = readFileSync(".ci/run", "utf8");
  expect(run).toMatch(/^npm test /m);
  expect(run).toMatch(/^npm run test:long /m);
});
