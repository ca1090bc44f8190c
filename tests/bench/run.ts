import { readdirSync, readFileSync, writeFileSync } from "node:fs";
import { cpus, loadavg, totalmem } from "node:os";
import type { BenchReport } from "./report.ts";

// `npm run bench` runs every bench here and writes docs/benchmarks.md; `npm run bench -- funnel` runs and prints one.
const wanted = process.argv.slice(2);
const names = readdirSync(import.meta.dirname)
  .filter((name) => name.endsWith(".bench.ts"))
  .filter((name) => wanted.length === 0 || wanted.some((part) => name.includes(part)))
  .sort();

const [load = 0] = loadavg();
const sections: string[] = [];
for (const name of names) {
  const { bench } = (await import(`./${name}`)) as { bench: () => BenchReport | Promise<BenchReport> };
  const section = inMarkdown(await bench());
  console.log(`${section}\n`);
  sections.push(section);
}
if (wanted.length === 0) writeFileSync("docs/benchmarks.md", `${[heading(), ...sections].join("\n\n")}\n`);

function heading(): string {
  const [processor] = cpus();
  return [
    "# Benchmarks",
    "Written by `npm run bench`. The times are medians of one run on one machine; compare the ratios, not the times.",
    `Machine: ${processor?.model.trim() ?? "unknown processor"}, ${cpus().length} cores, ${Math.round(totalmem() / 2 ** 30)} GB, ${process.platform}; processes waiting or running at the start: ${Math.round(load)}. Node.js ${process.version}. ${versions()}.`,
  ].join("\n\n");
}

function versions(): string {
  const { devDependencies } = JSON.parse(readFileSync("package.json", "utf8")) as {
    devDependencies: Record<string, string>;
  };
  return Object.entries(devDependencies)
    .filter(([name]) => /^(jstat|simple-statistics|tinybench|@stdlib\/)/.test(name))
    .map(([name, version]) => `${name} ${version}`)
    .join(", ");
}

function inMarkdown({ title, rows, notes }: BenchReport): string {
  const headings = Object.keys(rows[0] ?? {});
  const line = (cells: readonly string[]): string => `| ${cells.join(" | ")} |`;
  return [
    `## ${title}`,
    [
      line(headings),
      line(headings.map(() => "---")),
      ...rows.map((row) => line(headings.map((h) => row[h] ?? ""))),
    ].join("\n"),
    ...notes,
  ].join("\n\n");
}
