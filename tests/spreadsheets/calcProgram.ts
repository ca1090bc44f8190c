import { existsSync } from "node:fs";
import { join } from "node:path";

export type CalcVersion = "7.4" | "25.2";

const programs: Readonly<Record<CalcVersion, string>> = {
  "7.4": process.env.SOUNDFOLD_CALC ?? "/usr/bin/soffice",
  "25.2": join(process.env.SOUNDFOLD_CALC_NEWER ?? "/opt/soundfold-calc-newer", "soffice"),
};

/**
 * Where the program of a version stands.
 *
 * @throws Error that says how to get it
 */
export function calcProgram(version: CalcVersion): string {
  const program = programs[version];
  if (existsSync(program)) return program;
  throw new Error(
    `LibreOffice ${version} is not at ${program}: on Debian 12 run \`sh tests/spreadsheets/installCalc.sh\` as root, ` +
      `or name its ${version === "7.4" ? "program in SOUNDFOLD_CALC" : "folder in SOUNDFOLD_CALC_NEWER"}.`,
  );
}
