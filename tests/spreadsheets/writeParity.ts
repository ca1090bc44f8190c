import { writeFileSync } from "node:fs";
import { runParity } from "./runParity.ts";

// `npm run parity` writes docs/parity.md, and ends with an error when there is a difference that the page does not
// explain.

const { page, different } = await runParity();
writeFileSync("docs/parity.md", page);
console.log(`docs/parity.md: ${different.length} unexplained differences`);
for (const line of different) console.error(line);
if (different.length > 0) process.exitCode = 1;
