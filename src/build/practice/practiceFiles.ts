import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { offeredBooks } from "../../pages/practice/offeredBooks.ts";
import { drawIcon } from "../drawIcons.ts";

const require = createRequire(import.meta.url);

/** The files of the practice sheet that are not bundled, by name. */
export const practiceFiles = (): ReadonlyMap<string, string | Uint8Array> =>
  new Map<string, string | Uint8Array>([
    ["index.html", read("src/pages/practice/practice.html")],
    ["practice.css", styleSheet()],
    ...offeredBooks.map(({ file }) => [file, readFileSync(`samples/${file}`)] as const),
    ["icon-64.png", drawIcon(64)],
  ]);

/** The look that all pages share is put into a layer, which the embedded spreadsheet's own look goes before. */
const styleSheet = (): string =>
  [
    read(require.resolve("@univerjs/preset-sheets-core/lib/index.css")),
    read(require.resolve("uplot/dist/uPlot.min.css")),
    `@layer page {\n${read("src/pages/parts/look.css")}}`,
    read("src/pages/practice/practice.css"),
  ].join("\n");

const read = (file: string): string => readFileSync(file, "utf8");
