import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { version } from "../../../functions/version.ts";
import { type BundledPackage, bundledPackages } from "./bundledPackages.ts";
import { calcWorkbooks } from "./calcWorkbooks.ts";
import { checksums } from "./checksums.ts";
import { commandFiles } from "./commandFiles.ts";
import { commandTarball } from "./commandTarball.ts";
import { excelAddIn } from "./excelAddIn.ts";
import { frontPage } from "./frontPage.ts";
import { hostHeaders } from "./hostHeaders.ts";
import { libreOfficeExtension } from "./libreOfficeExtension.ts";
import { licenceList } from "./licenceList.ts";
import { packagesOfTools } from "./packagesOfTools.ts";
import { pageName, pageOf } from "./pageOf.ts";
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
  const inSheet = bundledPackages([...practice.modules, packagesOfTools.webpack, packagesOfTools.esbuild]);
  const command = await commandFiles({ content: text(practice.files, onePage), packages: inSheet });
  const tarball = `command/soundfold-${version}.tgz`;
  const bundles = new Map<string, readonly BundledPackage[]>([
    ["excel", bundledPackages([...excel.modules, packagesOfTools.webpack, packagesOfTools.esbuild])],
    [onePage, inSheet],
    ["practice", inSheet],
    ["libreoffice/soundfold.oxt", bundledPackages([...extension.modules, packagesOfTools.esbuild])],
    ["google-sheets/Code.gs", bundledPackages([...sheets.modules, packagesOfTools.esbuild])],
    [tarball, command.packages],
  ]);
  const excelSite = new Map([...excel.files, ...hostHeaders(text(excel.files, "taskpane.html"), "functions.json")]);
  const sheetSite = new Map([...practice.files, ...hostHeaders(text(practice.files, "index.html"))]);
  sheetSite.delete(onePage);
  const files = new Map<string, string | Uint8Array>([
    ["index.html", pageOf(frontPage(version, baseUrl), "")],
    ["README.txt", readMe(version, baseUrl)],
    [onePage, text(practice.files, onePage)],
    ...within("excel", new Map([...excelSite, ["SHA256SUMS", checksums(excelSite)]])),
    ...within("practice", sheetSite),
    ["libreoffice/soundfold.oxt", extension.oxt],
    ...within("libreoffice/workbooks", await calcWorkbooks()),
    ...within("google-sheets", sheets.files),
    [tarball, commandTarball(command.files)],
    ...within("workbooks", filesOf("samples", isTemplate)),
    ...["install", "functions", "methods"].flatMap((pages) => within(pages, pagesOf(`docs/${pages}`))),
    ...topPages.map((name) => [`${name}.html`, pageOf(readFileSync(`docs/${name}.md`, "utf8"), "")] as const),
    ["licences/LICENSE.txt", readFileSync("docs/LICENSE.txt")],
    ["licences/bundled.txt", licenceList(bundles)],
    ["sbom.cdx.json", softwareBill(bundles)],
  ]);
  return files.set("SHA256SUMS", checksums(files));
}

const onePage = "soundfold.html";

/** Pages of docs/ that stand on top of the release. */
const topPages = ["benchmarks", "bounds", "changelog", "safety", "scale"] as const;

function text(files: Files, name: string): string {
  const content = files.get(name);
  if (content === undefined) throw new Error(`${name} was not built`);
  return typeof content === "string" ? content : Buffer.from(content).toString("utf8");
}

const within = (folder: string, files: Files): readonly (readonly [string, string | Uint8Array])[] =>
  [...files].map(([path, content]) => [`${folder}/${path}`, content] as const);

const filesOf = (folder: string, wanted: (name: string) => boolean): Files =>
  new Map(
    readdirSync(folder)
      .filter(wanted)
      .map((name) => [name, readFileSync(join(folder, name))]),
  );

/** The pages of a folder as a browser shows them, with their pictures. */
const pagesOf = (folder: string): Files =>
  new Map(
    [...filesOf(folder, (name) => name.endsWith(".md") || name.endsWith(".svg"))].map(([name, content]) =>
      name.endsWith(".md") ? [pageName(name), pageOf(String(content))] : [name, content],
    ),
  );

// What `npm start` leaves beside a workbook is no part of it.
const isTemplate = (name: string): boolean => name.endsWith(".xlsx") && !name.endsWith("-worked-out.xlsx");
