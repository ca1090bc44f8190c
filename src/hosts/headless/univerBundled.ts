import * as core from "@univerjs/core";
import * as formula from "@univerjs/engine-formula";
import type { UniverParts } from "./univerParts.ts";

/**
 * What `univerInNode` hands out, for the command: bundled into one file, since the packages are many hundred files, and
 * to find and read these takes three times as long.
 */
export const univer: UniverParts = { core, formula };
