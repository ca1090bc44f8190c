import { readFileSync } from "node:fs";
import { readFootBook } from "../../src/templates/flockComparison/collate/readFootBook.ts";
import { WorkbookProblem } from "../../src/workbook/workbookProblem.ts";

// In a process of its own, since the peak memory of a process never goes down again.
const paths = readFileSync(0, "utf8").split("\n");
const begun = performance.now();
const kept: unknown[] = [];
for (const path of paths) {
  try {
    kept.push(readFootBook(readFileSync(path)));
  } catch (error) {
    if (!(error instanceof WorkbookProblem)) throw error;
  }
}
const seconds = (performance.now() - begun) / 1000;
process.stdout.write(JSON.stringify({ used: kept.length, peak: process.resourceUsage().maxRSS * 1024, seconds }));
