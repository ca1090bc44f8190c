import { bundleCommand } from "./bundleCommand.ts";
import { type BundledPackage, bundledPackages } from "./bundledPackages.ts";
import { licenceList } from "./licenceList.ts";
import { packagesOfTools } from "./packagesOfTools.ts";

interface CommandFiles {
  /** What belongs into dist/cli, by name. */
  readonly files: ReadonlyMap<
    "soundfold.js" | "spreadsheet.cjs" | "soundfold.html" | "licences.txt",
    string | Uint8Array
  >;
  /** The packages whose code is in the command. */
  readonly packages: readonly BundledPackage[];
}

/**
 * The soundfold command with its spreadsheet engine, and beside it the page that is one file, for `soundfold template farm --page`.
 *
 * @param page - the page, with the packages whose code is in it
 */
export async function commandFiles(page: {
  readonly content: string | Uint8Array;
  readonly packages: readonly BundledPackage[];
}): Promise<CommandFiles> {
  const { "soundfold.js": command, "spreadsheet.cjs": spreadsheet } = await bundleCommand();
  const packages = bundledPackages([...command.modules, ...spreadsheet.modules, packagesOfTools.esbuild]);
  const licences = licenceList(
    new Map([
      ["soundfold.js", bundledPackages([...command.modules, packagesOfTools.esbuild])],
      ["spreadsheet.cjs", bundledPackages([...spreadsheet.modules, packagesOfTools.esbuild])],
      ["soundfold.html", page.packages],
    ]),
  );
  return {
    files: new Map([
      ["soundfold.js", command.text],
      ["spreadsheet.cjs", spreadsheet.text],
      ["soundfold.html", page.content],
      ["licences.txt", licences],
    ]),
    packages,
  };
}
