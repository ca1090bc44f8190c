import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { version } from "../../../functions/version.ts";
import { type BundledPackage, bundledPackages } from "./bundledPackages.ts";
import { checksums } from "./checksums.ts";
import { excelAddIn } from "./excelAddIn.ts";
import { libreOfficeExtension } from "./libreOfficeExtension.ts";
import { licenceList } from "./licenceList.ts";
import { packagesOfTools } from "./packagesOfTools.ts";
import { practiceSheet } from "./practiceSheet.ts";
import { readMe } from "./readMe.ts";
import { sheetsScript } from "./sheetsScript.ts";
import { softwareBill } from "./softwareBill.ts";

type Files = ReadonlyMap<string, string | Uint8Array>;

/**
 * Everything that is handed out, by its path in the zip.
 *
 * @param baseUrl where the Excel add-in will be served from
 */
export async function releaseFiles(baseUrl: string): Promise<Files> {
  const [excel, practice, extension, sheets] = await Promise.all([
    excelAddIn(baseUrl),
    practiceSheet(),
    libreOfficeExtension(),
    sheetsScript(),
  ]);
  const bundles = new Map<string, readonly BundledPackage[]>([
    ["excel", bundledPackages([...excel.modules, packagesOfTools.webpack, packagesOfTools.esbuild])],
    ["practice", bundledPackages([...practice.modules, packagesOfTools.webpack, packagesOfTools.esbuild])],
    ["libreoffice/soundfold.oxt", bundledPackages([...extension.modules, packagesOfTools.esbuild])],
    ["google-sheets/Code.gs", bundledPackages([...sheets.modules, packagesOfTools.esbuild])],
  ]);
  const files = new Map<string, string | Uint8Array>([
    ["README.txt", readMe(version, baseUrl)],
    ...within("excel", new Map([...excel.files, ["SHA256SUMS", checksums(excel.files)]])),
    ...within("practice", practice.files),
    ["libreoffice/soundfold.oxt", extension.oxt],
    ...within("google-sheets", sheets.files),
    ...within("workbooks", filesOf("samples", isTemplate)),
    ...["install", "functions", "methods"].flatMap((pages) => within(pages, filesOf(`docs/${pages}`, isPage))),
    ["benchmarks.md", readFileSync("docs/benchmarks.md")],
    ["licences/LICENSE.txt", readFileSync("docs/LICENSE.txt")],
    ["licences/bundled.txt", licenceList(bundles)],
    ["sbom.cdx.json", softwareBill(bundles)],
  ]);
  return files.set("SHA256SUMS", checksums(files));
}

const within = (folder: string, files: Files): readonly (readonly [string, string | Uint8Array])[] =>
  [...files].map(([path, content]) => [`${folder}/${path}`, content] as const);

const filesOf = (folder: string, wanted: (name: string) => boolean): Files =>
  new Map(
    readdirSync(folder)
      .filter(wanted)
      .map((name) => [name, readFileSync(join(folder, name))]),
  );

const isPage = (name: string): boolean => name.endsWith(".md") || name.endsWith(".svg");

// What `npm start` leaves beside a workbook is no part of it.
const isTemplate = (name: string): boolean => name.endsWith(".xlsx") && !name.endsWith("-worked-out.xlsx");
