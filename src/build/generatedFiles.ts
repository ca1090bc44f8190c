import { readFileSync } from "node:fs";
import { catalogue } from "../../functions/catalogue.ts";
import { functionPage } from "../definition/functionPage.ts";
import { functionsJson } from "../hosts/excel/functionsJson.ts";
import { functionIndex } from "./functionIndex.ts";
import { methodFiles } from "./methods/methodFiles.ts";

/**
 * Every file that is made from the definitions and committed, by its path.
 *
 * `owned` folders hold nothing else, so a page of a function that is gone is told apart from a page written by hand.
 */
export function generatedFiles(): { readonly files: ReadonlyMap<string, string>; readonly owned: readonly string[] } {
  const { version } = JSON.parse(readFileSync("package.json", "utf8")) as { version: string };
  return {
    owned: ["docs/functions", "docs/methods"],
    files: new Map([
      ["functions/version.ts", versionFile(version)],
      ["src/hosts/excel/functions.json", `${JSON.stringify(functionsJson(catalogue), null, 2)}\n`],
      ["docs/functions/README.md", functionIndex(catalogue)],
      ...catalogue.map((definition) => [`docs/functions/${definition.name}.md`, functionPage(definition)] as const),
      ...methodFiles(),
    ]),
  };
}

const versionFile = (version: string): string =>
  `// Written by \`npm run generate\` from package.json.\nexport const version = ${JSON.stringify(version)};\n`;
