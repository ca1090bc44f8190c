import type { Plugin } from "esbuild";
import { type Bundle, bundle } from "./bundle.ts";

interface CommandBundles {
  readonly "soundfold.js": Bundle;
  /** The spreadsheet engine, which the command loads when a workbook is worked out. */
  readonly "spreadsheet.cjs": Bundle;
}

/**
 * The soundfold command, and beside it the spreadsheet engine, which only some of its work needs. What writes new
 * workbooks and the database stay outside, as dependencies; the rest is bundled, which halves the time the command takes
 * to start.
 */
export async function bundleCommand(): Promise<CommandBundles> {
  const common = { platform: "node", target: "node20", legalComments: "none" } as const;
  const [command, spreadsheet] = await Promise.all([
    bundle("src/cli/main.ts", {
      ...common,
      format: "esm",
      external: ["excelize-wasm", "@duckdb/node-api"],
      plugins: [spreadsheetBeside],
    }),
    bundle("src/hosts/headless/univerBundled.ts", { ...common, format: "cjs" }),
  ]);
  return { "soundfold.js": command, "spreadsheet.cjs": spreadsheet };
}

const spreadsheetBeside: Plugin = {
  name: "the spreadsheet engine in a file beside the command",
  setup({ onLoad }) {
    onLoad({ filter: /[\\/]univerInNode\.ts$/ }, () => ({
      contents: `import { createRequire } from "node:module";
export const univerInNode = () => createRequire(import.meta.url)("./spreadsheet.cjs").univer;`,
      loader: "js",
    }));
  },
};
