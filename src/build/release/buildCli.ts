import { chmodSync, mkdirSync, readFileSync, writeFileSync } from "node:fs";
import { bundledPackages } from "./bundledPackages.ts";
import { commandFiles } from "./commandFiles.ts";
import { packagesOfTools } from "./packagesOfTools.ts";
import { practiceSheet } from "./practiceSheet.ts";

// `npm run build:cli`, and before `npm pack`: writes the soundfold command to dist/cli.

const sheet = await practiceSheet();
const inPage = bundledPackages([...sheet.modules, packagesOfTools.webpack, packagesOfTools.esbuild]);
const command = await commandFiles({ content: sheet.files.get("soundfold.html") ?? "", packages: inPage });
mkdirSync("dist/cli", { recursive: true });
for (const [name, content] of command.files) writeFileSync(`dist/cli/${name}`, content);
// `npm pack` keeps who may read a file, which differs with the habits of the machine; the tarball must not.
const { files } = JSON.parse(readFileSync("package.json", "utf8")) as { readonly files: readonly string[] };
const packed = files.filter((file) => file !== "dist/cli");
const made = [...command.files.keys()].map((name) => `dist/cli/${name}`);
for (const file of ["package.json", "README.md", ...made, ...packed]) chmodSync(file, 0o644);
chmodSync("dist/cli/soundfold.js", 0o755);
const size = Math.round((command.files.get("soundfold.js")?.length ?? 0) / 1024);
console.log(`dist/cli/soundfold.js: ${size} kB, code of ${command.packages.length} other packages`);
