import { engineInNode } from "../../../src/hosts/headless/engineInNode.ts";
import { readPlace } from "../../../src/workbook/address.ts";
import { openWorkbook } from "../../../src/workbook/openWorkbook.ts";
import { recalculate } from "../../../src/workbook/recalculate.ts";
import { cellValue } from "../../../src/workbook/workbook.ts";
import { WorkbookProblem } from "../../../src/workbook/workbookProblem.ts";
import { corpus, type HostileFile } from "./corpus.ts";

// Run in a process of its own with little memory; prints a line for each file as soon as it is done.

const from = Number(process.argv[2] ?? 0);
for (const [place, file] of corpus.entries()) {
  if (place < from) continue;
  const bytes = file.make();
  const started = performance.now();
  const ended = await endOf(file, bytes);
  console.log(JSON.stringify({ name: file.name, ms: performance.now() - started, ...ended }));
}
console.log(JSON.stringify({ mostMemoryKb: process.resourceUsage().maxRSS }));
// The engine keeps timers that hold the process.
process.exit(0);

async function endOf({ endsIn }: HostileFile, bytes: Uint8Array): Promise<Record<string, unknown>> {
  try {
    const { bytes: saved } = await recalculate(openWorkbook(bytes), engineInNode());
    const [sheet] = openWorkbook(saved).sheets;
    if (!sheet) return { fault: "the saved file has no sheet" };
    const wanted = endsIn instanceof RegExp ? {} : endsIn;
    const answers = Object.keys(wanted).map((address) => {
      const { row, column } = readPlace(address) ?? { row: 0, column: 0 };
      return [address, cellValue(sheet, row, column)] as const;
    });
    return { answers: Object.fromEntries(answers) };
  } catch (error) {
    return error instanceof WorkbookProblem
      ? { sentence: error.message }
      : { fault: (error as Error)?.stack?.slice(0, 600) ?? String(error) };
  }
}
