import { mkdirSync, writeFileSync } from "node:fs";
import { catalogue } from "../../functions/catalogue.ts";
import { sheetsScript } from "./release/sheetsScript.ts";

// `npm run build:sheets`: writes dist/sheets/Code.gs and appsscript.json, to paste or to push into Google Sheets.

const { files } = await sheetsScript();
mkdirSync("dist/sheets", { recursive: true });
for (const [name, content] of files) writeFileSync(`dist/sheets/${name}`, content);
const length = files.get("Code.gs")?.length ?? 0;
console.log(`dist/sheets/Code.gs: ${catalogue.length} functions, ${Math.round(length / 1024)} kB`);
