import { join } from "node:path";
import process from "node:process";
import { fileURLToPath } from "node:url";
import { EsbuildPlugin } from "esbuild-loader";
import type { Configuration } from "webpack";
import { addInFiles } from "./addInFiles.ts";
import { checkedBaseUrl, developmentUrl } from "./baseUrl.ts";
import { EmitFiles } from "./emitFiles.ts";

const inSheet = "in the sheet";
const forReaders = "for readers";
const loader = (name: string): string => fileURLToPath(new URL(`${name}.ts`, import.meta.url));
const withoutEffects =
  /[\\/](?:functions|src[\\/](?:cells|core|reading|writing|definition)|node_modules[\\/](?:@stdlib|big\.js))[\\/]/;
const definitions = /[\\/]functions[\\/].+\.ts$/;

// The browsers that Excel itself shows pages in all know this much.
const target = "es2020";

/** What a build of the Excel add-in is made of. */
export const addInBundles = (baseUrl: string, outputFolder: string): Configuration => ({
  mode: "production",
  target: ["web", target],
  devtool: false,
  entry: {
    functions: { import: "./src/hosts/excel/functions.ts", layer: inSheet },
    site: "./src/pages/taskPane/site/main.ts",
    taskpane: { import: "./src/pages/taskPane/main.tsx", layer: forReaders },
  },
  output: {
    path: outputFolder,
    filename: "[name].js",
    chunkFilename: "[name].[contenthash:8].js",
    clean: true,
    iife: false,
  },
  resolve: { extensions: [".ts", ".tsx", ".js"] },
  module: {
    rules: [
      { test: /\.tsx?$/, loader: "esbuild-loader", options: { target, jsx: "automatic", jsxImportSource: "preact" } },
      // Nothing happens when these are loaded, so what a page does not call need not come with it.
      { test: withoutEffects, sideEffects: false },
      { test: definitions, issuerLayer: inSheet, enforce: "post", loader: loader("sheetOnlyLoader") },
      { test: definitions, issuerLayer: forReaders, enforce: "post", loader: loader("readersOnlyLoader") },
    ],
  },
  experiments: { layers: true },
  // esbuild puts the bundle into a function of its own, and only then finds what is never used.
  optimization: {
    minimizer: [new EsbuildPlugin({ target, format: "iife", treeShaking: true, legalComments: "none" })],
    // What several later parts need is a file once, and not in each of them.
    splitChunks: { cacheGroups: { shared: { chunks: "async", name: "shared", minChunks: 2, minSize: 0 } } },
  },
  plugins: [new EmitFiles(() => addInFiles(baseUrl))],
  performance: false,
});

/** `npm run build`, or `npm run build -- --env baseUrl=https://example.org/soundfold`. */
export default function build(env: { readonly baseUrl?: string }): Configuration {
  try {
    return addInBundles(checkedBaseUrl(env.baseUrl ?? developmentUrl), join(process.cwd(), "dist", "excel"));
  } catch (error) {
    // The sentence says it all; webpack would print it under a page of its own calls.
    process.stderr.write(`${(error as Error).message}\n`);
    process.exit(2);
  }
}
