import { existsSync, mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { generatedFiles } from "./generatedFiles.ts";

// `npm run generate` writes the files; with --check it only says which are stale, and fails if any are.
const checkOnly = process.argv.includes("--check");
const { files, owned } = generatedFiles();
const stray = owned.flatMap((folder) =>
  existsSync(folder)
    ? readdirSync(folder)
        .map((name) => join(folder, name))
        .filter((path) => !files.has(path))
    : [],
);
const stale = [...files].filter(([path, text]) => !existsSync(path) || readFileSync(path, "utf8") !== text);

if (checkOnly) {
  for (const path of [...stale.map(([path]) => path), ...stray]) console.error(`stale: ${path}`);
  if (stale.length + stray.length > 0) {
    console.error("Generated files are not what the definitions say; run npm run generate and commit the result.");
    process.exitCode = 1;
  }
} else {
  for (const path of stray) rmSync(path);
  for (const [path, text] of stale) {
    mkdirSync(dirname(path), { recursive: true });
    writeFileSync(path, text);
    console.log(`wrote ${path}`);
  }
}
