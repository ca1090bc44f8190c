import { readFileSync } from "node:fs";
import { catalogue } from "../../../functions/catalogue.ts";
import { version } from "../../../functions/version.ts";
import { extensionFiles } from "../../hosts/libreoffice/extensionFiles.ts";
import { type Bundle, bundle } from "./bundle.ts";
import { zipOf } from "./zipOf.ts";

/** The extension for LibreOffice Calc, and what its program is made of. */
export async function libreOfficeExtension(): Promise<Bundle & { readonly oxt: Uint8Array }> {
  const program = await bundle("src/hosts/libreoffice/answerLines.ts", {
    platform: "node",
    target: "node20",
    format: "cjs",
    minify: true,
    legalComments: "eof",
  });
  const files = extensionFiles({
    definitions: catalogue,
    version,
    oldestNode: oldestNode(),
    program: program.text,
    component: readFileSync("src/hosts/libreoffice/soundfold.py", "utf8"),
  });
  return { ...program, oxt: zipOf(files) };
}

function oldestNode(): readonly [number, number] {
  const { engines } = JSON.parse(readFileSync("package.json", "utf8")) as { engines: { node: string } };
  const [, major, minor] = /^>=(\d+)\.(\d+)$/.exec(engines.node) ?? [];
  if (major === undefined || minor === undefined)
    throw new Error(`engines.node is "${engines.node}", expected >=20.19`);
  return [Number(major), Number(minor)];
}
