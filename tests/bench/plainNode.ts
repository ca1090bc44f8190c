import { execFileSync } from "node:child_process";
import { mkdirSync, readFileSync, writeFileSync } from "node:fs";
import { join, resolve } from "node:path";
import { build } from "esbuild";
import { developmentUrl } from "../../src/build/baseUrl.ts";
import { excelAddIn } from "../../src/build/release/excelAddIn.ts";
import type { BenchReport } from "./report.ts";
import { functionsBundle } from "./shippedFunctions.ts";

const folder = "dist/bench";
const ofTheCommand = ["@univerjs/*", "excelize-wasm", "@duckdb/node-api"];

/**
 * Runs a program of this folder as what ships is run: bundled by the bundler of the command and of the program for
 * LibreOffice, in a process of its own, under Node.js without a loader.
 *
 * @param name - the file, without its ending
 * @param call - what to call in it; what it gives is printed as JSON
 * @returns what it printed
 */
export async function inPlainNode(name: string, call: string, ...given: readonly string[]): Promise<string> {
  const program = join(folder, `${name}.cjs`);
  await build({
    stdin: {
      contents: `import { ${call} } from "./${name}.ts";\nPromise.resolve(${call}(...process.argv.slice(2))).then((found) => found === undefined || console.log(JSON.stringify(found)));`,
      resolveDir: import.meta.dirname,
      loader: "ts",
    },
    outfile: program,
    bundle: true,
    platform: "node",
    format: "cjs",
    target: "node20",
    minify: true,
    // What the command loads from outside its bundle, and the libraries we are set against: as their makers ship them.
    external: [...ofTheCommand, "jstat", "simple-statistics", "@stdlib/stats-base-dists-*"],
    logLevel: "error",
  });
  return execFileSync(process.execPath, ["--expose-gc", program, ...given], {
    encoding: "utf8",
    stdio: ["ignore", "pipe", "inherit"],
    maxBuffer: 2 ** 26,
  });
}

/** The report of a bench that measures in its own process. */
export async function measured(name: string): Promise<BenchReport> {
  const source = readFileSync(join(import.meta.dirname, `${name}.ts`), "utf8");
  if (source.includes("./shippedFunctions.ts")) await provideFunctions();
  return JSON.parse(await inPlainNode(name, "bench")) as BenchReport;
}

let provided: Promise<void> | undefined;

/** The add-in's bundle of functions, as `npm run build` makes it. */
function provideFunctions(): Promise<void> {
  provided ??= excelAddIn(developmentUrl).then(({ files }) => {
    const text = files.get("functions.js");
    if (text === undefined) throw new Error("the build lacks the bundle of functions");
    mkdirSync(resolve(folder), { recursive: true });
    writeFileSync(functionsBundle, text);
  });
  return provided;
}
