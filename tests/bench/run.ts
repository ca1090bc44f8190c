import { readdirSync, readFileSync, writeFileSync } from "node:fs";
import { cpus, loadavg, totalmem } from "node:os";
import type { BenchReport } from "./report.ts";

// `npm run bench` runs every bench here and writes docs/benchmarks.md; `npm run bench -- funnel` runs one and renews its
// section there.
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
const page = "docs/benchmarks.md";
const parts = wanted.length === 0 ? [heading(), ...sections] : renewed(readFileSync(page, "utf8"), sections);
writeFileSync(page, `${parts.join("\n\n")}\n`);

/** The parts of the page with some sections renewed; a section that is new comes last. */
function renewed(text: string, fresh: readonly string[]): readonly string[] {
  const titleOf = (section: string): string => section.split("\n", 1)[0] ?? "";
  const byTitle = new Map(fresh.map((section) => [titleOf(section), section]));
  const old = text.trimEnd().split(/\n\n(?=## )/);
  const kept = old.map((section) => byTitle.get(titleOf(section)) ?? section);
  return [...kept, ...fresh.filter((section) => !old.some((other) => titleOf(other) === titleOf(section)))];
}

function heading(): string {
  const [processor] = cpus();
  return [
    "# Benchmarks",
    "Written by `npm run bench`. The times were taken on one machine that other work shared; compare the ratios, not the times.",
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
