import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { expect, it } from "vitest";

const folders = ["src/core", "functions"];
const files = folders.flatMap((folder) =>
  readdirSync(folder, { recursive: true, encoding: "utf8" })
    .filter((name) => name.endsWith(".ts"))
    .map((name) => join(folder, name)),
);

const comments = /\/\*[\s\S]*?\*\/|\/\/.*/g;
// ECMA-262 leaves the last digits of these to the engine; Math.sqrt and plain arithmetic it does not.
const enginesOwn =
  /Math\.(?:exp|expm1|log|log1p|log2|log10|pow|hypot|cbrt|sin|cos|tan|a?sinh?|a?cosh?|a?tanh?|atan2)\(|\*\*/;

it.each(files)("%s takes no digits from the JavaScript engine", (path) => {
  expect(readFileSync(path, "utf8").replace(comments, "")).not.toMatch(enginesOwn);
});
