import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { TestProject } from "vitest/node";
import { bundlePractice } from "../../src/build/practice/bundlePractice.ts";
import { provideBrowser } from "../../src/build/provideBrowser.ts";
import { buildAddIn } from "./buildAddIn.ts";

declare module "vitest" {
  export interface ProvidedContext {
    /** The program file of Chrome, Chromium or Edge. */
    browserPath: string;
    /** The folder that holds the add-in as `npm run build` makes it. */
    addInFolder: string;
    /** The folder that holds the practice sheet as `npm run build:practice` makes it. */
    practiceFolder: string;
  }
}

/** Runs once before the browser tests: no browser means no tests, never tests that are left out. */
export default async function setUp(project: TestProject): Promise<() => void> {
  project.provide("browserPath", provideBrowser());
  const home = mkdtempSync(join(tmpdir(), "soundfold-pages-"));
  const [addIn, practice] = [join(home, "add-in"), join(home, "practice")];
  buildAddIn(addIn);
  project.provide("addInFolder", addIn);
  await bundlePractice(practice);
  project.provide("practiceFolder", practice);
  return () => rmSync(home, { recursive: true, force: true });
}
