import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { TestProject } from "vitest/node";
import { provideBrowser } from "../../src/build/provideBrowser.ts";
import { buildAddIn } from "./buildAddIn.ts";

declare module "vitest" {
  export interface ProvidedContext {
    /** The program file of Chrome, Chromium or Edge. */
    browserPath: string;
    /** The folder that holds the add-in as `npm run build` makes it. */
    addInFolder: string;
  }
}

/** Runs once before the browser tests: no browser means no tests, never tests that are left out. */
export default function setUp(project: TestProject): () => void {
  project.provide("browserPath", provideBrowser());
  const folder = mkdtempSync(join(tmpdir(), "soundfold-add-in-"));
  buildAddIn(folder);
  project.provide("addInFolder", folder);
  return () => rmSync(folder, { recursive: true, force: true });
}
