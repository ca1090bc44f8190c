import { createRequire } from "node:module";
import type { UniverParts } from "./univerParts.ts";

// Measured with 0.25.1: its ES modules cannot be imported by Node, its CommonJS ones can be required.
const require = createRequire(import.meta.url);

/** The engine's packages as Node loads them. */
export const univerInNode = (): UniverParts => ({
  core: require("@univerjs/core") as UniverParts["core"],
  formula: require("@univerjs/engine-formula") as UniverParts["formula"],
});
