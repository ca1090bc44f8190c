import process from "node:process";
import { EsbuildPlugin } from "esbuild-loader";
import type { Configuration } from "webpack";
import { EmitFiles } from "../emitFiles.ts";
import { practiceFiles } from "./practiceFiles.ts";

// The embedded spreadsheet itself needs a browser of 2020 or later.
const target = "es2020";

/** What a build of the practice sheet is made of. */
export const practiceBundle = (outputFolder: string): Configuration => ({
  mode: "production",
  target: ["web", target],
  devtool: false,
  context: process.cwd(),
  entry: { practice: "./src/pages/practice/main.tsx" },
  output: { path: outputFolder, filename: "[name].js", clean: true, iife: false },
  resolve: { extensions: [".ts", ".tsx", ".js"] },
  module: {
    rules: [
      {
        test: /\.tsx?$/,
        loader: "esbuild-loader",
        options: { target, jsx: "automatic", jsxImportSource: "preact" },
      },
    ],
  },
  optimization: {
    // One file: the page is of no use before all of it is there.
    splitChunks: false,
    minimizer: [new EsbuildPlugin({ target, format: "iife", treeShaking: true, legalComments: "none" })],
  },
  plugins: [new EmitFiles(practiceFiles)],
  performance: false,
});
