import { chmodSync, mkdirSync, readFileSync, writeFileSync } from "node:fs";
import { bundleCommand } from "./bundleCommand.ts";
import { bundledPackages } from "./bundledPackages.ts";
import { licenceList } from "./licenceList.ts";
import { packagesOfTools } from "./packagesOfTools.ts";
import { practiceSheet } from "./practiceSheet.ts";

// `npm run build:cli`, and before `npm pack`: writes the soundfold command to dist/cli, and beside it the page that is one
// file, for `soundfold template farm --page`.

const { text, modules } = await bundleCommand();
const packages = bundledPackages([...modules, packagesOfTools.esbuild]);
const sheet = await practiceSheet();
const inPage = bundledPackages([...sheet.modules, packagesOfTools.webpack, packagesOfTools.esbuild]);
mkdirSync("dist/cli", { recursive: true });
const [command, page, licences] = ["dist/cli/soundfold.js", "dist/cli/soundfold.html", "dist/cli/licences.txt"];
writeFileSync(command, text);
writeFileSync(page, sheet.files.get("soundfold.html") ?? "");
writeFileSync(
  licences,
  licenceList(
    new Map([
      ["soundfold.js", packages],
      ["soundfold.html", inPage],
    ]),
  ),
);
// `npm pack` keeps who may read a file, which differs with the habits of the machine; the tarball must not.
const { files } = JSON.parse(readFileSync("package.json", "utf8")) as { readonly files: readonly string[] };
const packed = files.filter((file) => file !== "dist/cli");
for (const file of ["package.json", "README.md", page, licences, ...packed]) chmodSync(file, 0o644);
chmodSync(command, 0o755);
console.log(`dist/cli/soundfold.js: ${Math.round(text.length / 1024)} kB, code of ${packages.length} other packages`);
