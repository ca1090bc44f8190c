import { catalogue } from "../../../functions/catalogue.ts";
import { version } from "../../../functions/version.ts";
import { bundleName, scriptFile } from "../../hosts/sheets/scriptFile.ts";
import type { Built } from "./built.ts";
import { bundle } from "./bundle.ts";

// The time zone here is of no consequence: dates are read in the zone of the spreadsheet.
const manifest = { timeZone: "Etc/UTC", dependencies: {}, exceptionLogging: "NONE", runtimeVersion: "V8" };

/** Code.gs and appsscript.json, to paste or to push into Google Sheets. */
export async function sheetsScript(): Promise<Built> {
  const { text, modules } = await bundle("src/hosts/sheets/entry.ts", {
    platform: "neutral",
    mainFields: ["module", "main"],
    target: "es2019",
    format: "iife",
    globalName: bundleName,
    minify: true,
    legalComments: "eof",
  });
  const files = new Map([
    ["Code.gs", scriptFile(catalogue, version, text)],
    ["appsscript.json", `${JSON.stringify(manifest, null, 2)}\n`],
  ]);
  return { files, modules };
}
