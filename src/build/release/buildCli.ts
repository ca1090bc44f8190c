import { chmodSync, mkdirSync, readFileSync, writeFileSync } from "node:fs";
import { bundleCommand } from "./bundleCommand.ts";
import { bundledPackages } from "./bundledPackages.ts";
import { licenceList } from "./licenceList.ts";
import { packagesOfTools } from "./packagesOfTools.ts";

// `npm run build:cli`, and before `npm pack`: writes the soundfold command to dist/cli.

const { text, modules } = await bundleCommand();
const packages = bundledPackages([...modules, packagesOfTools.esbuild]);
mkdirSync("dist/cli", { recursive: true });
const [command, licences] = ["dist/cli/soundfold.js", "dist/cli/licences.txt"];
writeFileSync(command, text);
writeFileSync(licences, licenceList(new Map([["soundfold.js", packages]])));
// `npm pack` keeps who may read a file, which differs with the habits of the machine; the tarball must not.
const { files } = JSON.parse(readFileSync("package.json", "utf8")) as { readonly files: readonly string[] };
const packed = files.filter((file) => file !== "dist/cli");
for (const file of ["package.json", "README.md", licences, ...packed]) chmodSync(file, 0o644);
chmodSync(command, 0o755);
console.log(`dist/cli/soundfold.js: ${Math.round(text.length / 1024)} kB, code of ${packages.length} other packages`);
