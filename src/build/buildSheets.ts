import { mkdirSync, writeFileSync } from "node:fs";
import { build } from "esbuild";
import { catalogue } from "../../functions/catalogue.ts";
import { version } from "../../functions/version.ts";
import { bundleName, scriptFile } from "../hosts/sheets/scriptFile.ts";

// `npm run build:sheets`: writes dist/sheets/Code.gs and appsscript.json, to paste or to push into Google Sheets.

const { outputFiles } = await build({
  entryPoints: ["src/hosts/sheets/entry.ts"],
  bundle: true,
  write: false,
  platform: "neutral",
  mainFields: ["module", "main"],
  target: "es2019",
  format: "iife",
  globalName: bundleName,
  minify: true,
  legalComments: "eof",
});
const [bundle] = outputFiles;
if (bundle === undefined) throw new Error("esbuild gave no bundle");

// The time zone here is of no consequence: dates are read in the zone of the spreadsheet.
const manifest = { timeZone: "Etc/UTC", dependencies: {}, exceptionLogging: "NONE", runtimeVersion: "V8" };

const script = scriptFile(catalogue, version, bundle.text);
mkdirSync("dist/sheets", { recursive: true });
writeFileSync("dist/sheets/Code.gs", script);
writeFileSync("dist/sheets/appsscript.json", `${JSON.stringify(manifest, null, 2)}\n`);
console.log(`dist/sheets/Code.gs: ${catalogue.length} functions, ${Math.round(script.length / 1024)} kB`);
