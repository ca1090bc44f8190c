import { readFileSync } from "node:fs";
import { catalogue } from "../../functions/catalogue.ts";
import { functionsJson } from "../hosts/excel/functionsJson.ts";
import { templateList } from "../pages/templateList.ts";
import { drawIcon, iconSizes } from "./drawIcons.ts";
import { excelManifest } from "./excelManifest.ts";

/** The files of the add-in that are not bundled, by name. */
export function addInFiles(baseUrl: string): ReadonlyMap<string, string | Uint8Array> {
  const { version } = JSON.parse(readFileSync("package.json", "utf8")) as { version: string };
  return new Map<string, string | Uint8Array>([
    ["manifest.xml", excelManifest(readFileSync("manifest/manifest.xml", "utf8"), { baseUrl, version })],
    ["functions.json", asText(functionsJson(catalogue, `${baseUrl}/taskpane.html`))],
    ["taskpane.html", readFileSync("src/pages/taskPane/taskPane.html", "utf8")],
    ...sitePages.map((name) => [name, readFileSync(`src/pages/taskPane/site/${name}`, "utf8")] as const),
    // The look that all pages share comes first, so that a page can add to it.
    [
      "taskpane.css",
      ["parts/look.css", "taskPane/taskPane.css"].map((name) => readFileSync(`src/pages/${name}`, "utf8")).join("\n"),
    ],
    ...templateList.map(({ file }) => [`templates/${file}`, readFileSync(`samples/${file}`)] as const),
    ...iconSizes.map((size) => [`icons/icon-${size}.png`, drawIcon(size)] as const),
  ]);
}

/** For whoever comes to the address: the manifest for it, and the pages that a manifest and a marketplace ask for. */
const sitePages = ["index.html", "support.html", "privacy.html"] as const;

const asText = (value: unknown): string => `${JSON.stringify(value, null, 2)}\n`;
