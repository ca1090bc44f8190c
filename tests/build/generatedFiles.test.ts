import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { generatedFiles } from "../../src/build/generatedFiles.ts";

describe("generated files", () => {
  const { files } = generatedFiles();

  it.each([...files.keys()])("%s is what the definitions say", (path) => {
    expect(readFileSync(path, "utf8")).toBe(files.get(path));
  });
});
