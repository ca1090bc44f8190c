import { spawnSync } from "node:child_process";
import { existsSync } from "node:fs";
import { createRequire } from "node:module";
import { dirname, join } from "node:path";
import process from "node:process";
import { chromium } from "playwright-core";
import { findBrowser } from "./findBrowser.ts";

/**
 * Finds Chrome, Chromium or Edge, and installs one where there is none: the Debian package for root on Debian,
 * playwright's own download elsewhere.
 *
 * @returns the program file
 * @throws Error with one sentence on how to go on, when none could be installed
 */
export function provideBrowser(): string {
  const found = present();
  if (found) return found;
  for (const install of [fromDebian, fromPlaywright]) {
    install();
    const installed = present();
    if (installed) return installed;
  }
  throw new Error(
    "No Chrome, Chromium or Edge was found and none could be installed; install one, or set CHROME_PATH to its program file.",
  );
}

const present = (): string | undefined =>
  findBrowser({ platform: process.platform, env: process.env, exists: existsSync }) ?? downloaded();

function downloaded(): string | undefined {
  const path = chromium.executablePath();
  return existsSync(path) ? path : undefined;
}

function fromDebian(): void {
  if (!existsSync("/etc/debian_version") || process.getuid?.() !== 0) return;
  run("apt-get", ["update", "-qq"]);
  run("apt-get", ["install", "-y", "-qq", "--no-install-recommends", "chromium"]);
}

function fromPlaywright(): void {
  const folder = dirname(createRequire(import.meta.url).resolve("playwright-core/package.json"));
  run(process.execPath, [join(folder, "cli.js"), "install", "chromium"]);
}

const run = (program: string, given: readonly string[]): void => {
  spawnSync(program, given, {
    stdio: ["ignore", "ignore", "inherit"],
    env: { ...process.env, DEBIAN_FRONTEND: "noninteractive" },
  });
};
