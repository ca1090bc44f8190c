import { mkdirSync, writeFileSync } from "node:fs";
import { catalogue } from "../../functions/catalogue.ts";
import { libreOfficeExtension } from "./release/libreOfficeExtension.ts";

// `npm run build:libreoffice`: writes dist/soundfold.oxt, the extension for LibreOffice Calc.

const { oxt, text } = await libreOfficeExtension();
mkdirSync("dist", { recursive: true });
writeFileSync("dist/soundfold.oxt", oxt);
console.log(`dist/soundfold.oxt: ${catalogue.length} functions, program ${Math.round(text.length / 1024)} kB`);
