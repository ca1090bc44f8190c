import { readFileSync, writeSync } from "node:fs";

// Run in a process of its own: tryKind.ts ROOT FILE works a file out with the program in that folder and prints what it
// took. The folder may be another checkout, for figures of before and after.
const [root = "", file = ""] = process.argv.slice(2);
const part = (name: string) => import(`${root}/src/${name}`);
const { openWorkbook } = await part("workbook/openWorkbook.ts");
const { recalculate } = await part("workbook/recalculate.ts");
const { engineInNode } = await part("hosts/headless/engineInNode.ts");
const bytes = new Uint8Array(readFileSync(file));
const { bytes: after, summary } = await recalculate(openWorkbook(bytes), engineInNode(), undefined, { all: true });
const { userCPUTime, systemCPUTime, maxRSS } = process.resourceUsage();
const cells: Record<string, unknown> = {};
const { placeText } = await part("workbook/address.ts");
for (const row of openWorkbook(after).sheets[0]?.rows ?? [])
  for (const cell of row.cells)
    if (cell.row % 1000 === 999 || cell.row < 50)
      cells[placeText(cell)] = typeof cell.value === "string" ? cell.value.slice(0, 20) : cell.value;
const reasons = [...new Set(summary.left.map(({ reason }: { reason: string }) => reason))];
const told = {
  seconds: (userCPUTime + systemCPUTime) / 1e6,
  megabytes: maxRSS / 1024,
  cells,
  reasons,
  left: summary.left.length,
};
// At once, since the process does not end of itself and is not waited for.
writeSync(1, JSON.stringify(told));
process.exit(0);
