import { mkdirSync, readFileSync, writeFileSync } from "node:fs";
import { build } from "esbuild";
import { strToU8, zipSync } from "fflate";
import { catalogue } from "../../functions/catalogue.ts";
import { version } from "../../functions/version.ts";
import { extensionFiles } from "../hosts/libreoffice/extensionFiles.ts";

// `npm run build:libreoffice`: writes dist/soundfold.oxt, the extension for LibreOffice Calc.

const { outputFiles } = await build({
  entryPoints: ["src/hosts/libreoffice/answerLines.ts"],
  bundle: true,
  write: false,
  platform: "node",
  target: "node20",
  format: "cjs",
  minify: true,
  legalComments: "eof",
});
const [program] = outputFiles;
if (program === undefined) throw new Error("esbuild gave no program");

const { engines } = JSON.parse(readFileSync("package.json", "utf8")) as { engines: { node: string } };
const [, major, minor] = /^>=(\d+)\.(\d+)$/.exec(engines.node) ?? [];
if (major === undefined || minor === undefined) throw new Error(`engines.node is "${engines.node}", expected >=20.19`);

const files = extensionFiles({
  definitions: catalogue,
  version,
  oldestNode: [Number(major), Number(minor)],
  program: program.text,
  component: readFileSync("src/hosts/libreoffice/soundfold.py", "utf8"),
});

// A fixed time, so that the same source gives the same bytes. A zip entry holds the local time.
const mtime = new Date(2020, 0, 1);
const entries = Object.fromEntries([...files].map(([path, text]) => [path, [strToU8(text), { mtime }] as const]));
mkdirSync("dist", { recursive: true });
writeFileSync("dist/soundfold.oxt", zipSync(entries as never));
console.log(`dist/soundfold.oxt: ${catalogue.length} functions, program ${Math.round(program.text.length / 1024)} kB`);
