import { join } from "node:path";
import process from "node:process";
import { EsbuildPlugin } from "esbuild-loader";
import webpack, { type Configuration } from "webpack";
import { EmitFiles } from "../emitFiles.ts";
import { CompileAhead } from "./compileAhead.ts";
import { EmitSinglePage } from "./emitSinglePage.ts";
import { practiceFiles } from "./practiceFiles.ts";

// The embedded spreadsheet itself needs a browser of 2020 or later.
const target = "es2020";

// Where words may be split, in 76 languages, and in which of them a text is written: five megabytes that no cell asks for.
const hyphenation = /^\.\/[a-z][a-z0-9-]+-[\w-]{8}\.js$/;
const withoutHyphenation = new webpack.NormalModuleReplacementPlugin(hyphenation, (found) => {
  if (/engine-render[\\/]lib[\\/]es$/.test(found.context)) found.request = "data:text/javascript,export{}";
});
const withoutLanguages = new webpack.NormalModuleReplacementPlugin(
  /^franc-min$/,
  'data:text/javascript,export const franc = () => "und"',
);

const withoutStorage = new webpack.NormalModuleReplacementPlugin(
  /^localforage$/,
  join(process.cwd(), "src/pages/practice/grid/noStorage.ts"),
);

/** What a build of the practice sheet is made of. */
export const practiceBundle = (outputFolder: string): Configuration => ({
  mode: "production",
  target: ["web", target],
  devtool: false,
  context: process.cwd(),
  // The examples of the functions hold errors, and for each a browser that is watched goes through all the code around
  // it: with a file of their own that is not the code of the spreadsheet, which would take seconds.
  entry: {
    functions: "./functions/catalogue.ts",
    practice: { import: "./src/pages/practice/main.tsx", dependOn: "functions" },
  },
  output: {
    path: outputFolder,
    filename: "[name].js",
    clean: true,
    iife: false,
    // Modules are then functions in parentheses, which the browser compiles ahead.
    environment: { methodShorthand: false, arrowFunction: false },
  },
  resolve: { extensions: [".ts", ".tsx", ".js"] },
  module: {
    parser: { javascript: { dynamicImportMode: "eager" } },
    rules: [
      {
        test: /\.tsx?$/,
        loader: "esbuild-loader",
        options: { target, jsx: "automatic", jsxImportSource: "preact" },
      },
      {
        // Asks for a CommonJS `exports`, and then esbuild takes the whole bundle for one: a function that the browser
        // reads twice over before it runs, which took 1.5 seconds.
        test: /[\\/]lodash-es[\\/].+\.js$/,
        loader: "esbuild-loader",
        options: { target, define: { exports: "undefined", module: "undefined" } },
      },
    ],
  },
  optimization: {
    // No more files: the page is of no use before all of it is there.
    splitChunks: false,
    minimizer: [new EsbuildPlugin({ target, format: "iife", treeShaking: true, legalComments: "none" })],
  },
  plugins: [
    withoutHyphenation,
    withoutLanguages,
    withoutStorage,
    new EmitFiles(practiceFiles),
    new CompileAhead(),
    new EmitSinglePage(),
  ],
  performance: false,
});
