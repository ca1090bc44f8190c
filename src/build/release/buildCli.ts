import { mkdirSync, writeFileSync } from "node:fs";
import { bundle } from "./bundle.ts";
import { bundledPackages } from "./bundledPackages.ts";
import { licenceList } from "./licenceList.ts";
import { packagesOfTools } from "./packagesOfTools.ts";

// `npm run build:cli`, and before `npm pack`: writes the soundfold command to dist/cli. The spreadsheet engine stays
// outside, as a dependency; the rest is bundled, which halves the time the command takes to start.

const { text, modules } = await bundle("src/cli/main.ts", {
  platform: "node",
  target: "node20",
  format: "esm",
  external: ["@univerjs/*", "excelize-wasm"],
  legalComments: "none",
});
const packages = bundledPackages([...modules, packagesOfTools.esbuild]);
mkdirSync("dist/cli", { recursive: true });
writeFileSync("dist/cli/soundfold.js", text, { mode: 0o755 });
writeFileSync("dist/cli/licences.txt", licenceList(new Map([["soundfold.js", packages]])));
console.log(`dist/cli/soundfold.js: ${Math.round(text.length / 1024)} kB, code of ${packages.length} other packages`);
