import { execFileSync } from "node:child_process";
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { TestProject } from "vitest/node";
import { provideBrowser } from "../../src/build/provideBrowser.ts";

declare module "vitest" {
  export interface ProvidedContext {
    /** The program file of Chrome, Chromium or Edge. */
    browserPath: string;
    /** The folder that holds the add-in as `npm run build` makes it. */
    addInFolder: string;
  }
}

/** The address the add-in of the tests is built for; no such host exists (RFC 2606). */
export const addInUrl = "https://add-in.invalid";

/** Runs once before the browser tests: no browser means no tests, never tests that are left out. */
export default function setUp(project: TestProject): () => void {
  project.provide("browserPath", provideBrowser());
  const folder = mkdtempSync(join(tmpdir(), "soundfold-add-in-"));
  // On Windows npm is a script for the shell.
  execFileSync("npm", ["run", "--silent", "build", "--", "--env", `baseUrl=${addInUrl}`, "--output-path", folder], {
    stdio: ["ignore", "ignore", "inherit"],
    shell: process.platform === "win32",
  });
  project.provide("addInFolder", folder);
  return () => rmSync(folder, { recursive: true, force: true });
}
