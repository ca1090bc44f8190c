import { execFileSync } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { picture, sheetPlan } from "../workbook/writers/sheetPlan.ts";

// Debian's, since that is the one that its packages are for.
const python = process.env.SOUNDFOLD_PYTHON ?? "/usr/bin/python3";

/** What each script needs, and the packages that bring it; openpyxl draws pictures with Pillow. */
const needs = {
  xlsxWriter: { modules: "xlsxwriter", packages: "python3-xlsxwriter" },
  openpyxl: { modules: "openpyxl, PIL", packages: "python3-openpyxl python3-pil" },
} as const;

/**
 * The records and answers as a library for Python writes them.
 *
 * @throws Error that says what to install when the library is not there
 */
export function pythonWorkbook(library: keyof typeof needs, ...words: readonly string[]): Uint8Array {
  const { modules, packages } = needs[library];
  if (!runs(["-c", `import ${modules}`]))
    throw new Error(
      `${python} has no ${modules}: on Debian 12 run \`apt-get install ${packages}\` as root, or name a Python that has it in SOUNDFOLD_PYTHON.`,
    );
  const folder = mkdtempSync(join(tmpdir(), "soundfold-python-"));
  try {
    const script = fileURLToPath(new URL(`../workbook/writers/${library}.py`, import.meta.url));
    const plan = { ...sheetPlan, picture: Buffer.from(picture).toString("base64") };
    const file = join(folder, "book.xlsx");
    execFileSync(python, [script, file, ...words], { input: JSON.stringify(plan) });
    return readFileSync(file);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

function runs(given: readonly string[]): boolean {
  try {
    execFileSync(python, given, { stdio: "ignore" });
    return true;
  } catch {
    return false;
  }
}
