import { readdirSync, readFileSync, writeFileSync } from "node:fs";
import { cpus, loadavg, totalmem } from "node:os";
import { measured } from "./plainNode.ts";
import type { BenchReport, Limit } from "./report.ts";
import { worseThan } from "./worseThan.ts";

// `npm run bench` runs every bench here and writes docs/benchmarks.md; `npm run bench -- funnel` runs one and renews its
// section there. It ends with code 1 when a figure passes its limit. What is called .measure.ts runs by itself, bundled and
// without a loader; a .bench.ts starts programs that are measured from outside.
const wanted = process.argv.slice(2);
const names = readdirSync(import.meta.dirname)
  .filter((name) => /\.(?:bench|measure)\.ts$/.test(name))
  .filter((name) => wanted.length === 0 || wanted.some((part) => name.includes(part)))
  .sort();

const worseTitle = "## What got worse";
const [load = 0] = loadavg();
const page = "docs/benchmarks.md";
const before = readFileSync(page, "utf8");
const sections: string[] = [];
for (const name of names) {
  const report = await reportOf(name);
  for (const limit of passed(report)) {
    console.error(`over its limit: ${limitInWords(limit)}`);
    process.exitCode = 1;
  }
  const section = inMarkdown(report);
  console.log(`${section}\n`);
  sections.push(section);
}
const parts = wanted.length === 0 ? sections : renewed(before, sections);
writeFileSync(page, `${[heading(), ...parts, gotWorse(before, sections)].join("\n\n")}\n`);

async function reportOf(name: string): Promise<BenchReport> {
  if (name.endsWith(".measure.ts")) return measured(name.replace(/\.ts$/, ""));
  const { bench } = (await import(`./${name}`)) as { bench: () => BenchReport | Promise<BenchReport> };
  return bench();
}

function sectionsOf(text: string): readonly string[] {
  const [, ...old] = text.trimEnd().split(/\n\n(?=## )/);
  return old.filter((section) => titleOf(section) !== worseTitle);
}

function titleOf(section: string): string {
  return section.split("\n", 1)[0] ?? "";
}

/** The sections of the page with some renewed; one that is new comes last. */
function renewed(text: string, fresh: readonly string[]): readonly string[] {
  const byTitle = new Map(fresh.map((section) => [titleOf(section), section]));
  const old = sectionsOf(text);
  const kept = old.map((section) => byTitle.get(titleOf(section)) ?? section);
  return [...kept, ...fresh.filter((section) => !old.some((other) => titleOf(other) === titleOf(section)))];
}

function heading(): string {
  const [processor] = cpus();
  return [
    "# Benchmarks",
    "Written by `npm run bench`; `npm run bench -- NAME` runs one part and renews its section. The times were taken on one machine that other work shared; compare the ratios, not the times.",
    `Machine: ${processor?.model.trim() ?? "unknown processor"}, ${cpus().length} cores, ${Math.round(totalmem() / 2 ** 30)} GB, ${process.platform}; processes waiting or running at the start: ${Math.round(load)}. Node.js ${process.version}. ${versions()}.`,
  ].join("\n\n");
}

function versions(): string {
  const { devDependencies } = JSON.parse(readFileSync("package.json", "utf8")) as {
    devDependencies: Record<string, string>;
  };
  return Object.entries(devDependencies)
    .filter(([name]) => /^(jstat|simple-statistics|@stdlib\/)/.test(name))
    .map(([name, version]) => `${name} ${version}`)
    .join(", ");
}

function inMarkdown(report: BenchReport): string {
  const { title, rows, notes, limits = [] } = report;
  const headings = Object.keys(rows[0] ?? {});
  const line = (cells: readonly string[]): string => `| ${cells.join(" | ")} |`;
  const over = passed(report);
  return [
    `## ${title}`,
    [
      line(headings),
      line(headings.map(() => "---")),
      ...rows.map((row) => line(headings.map((h) => row[h] ?? ""))),
    ].join("\n"),
    ...notes,
    ...(limits.length === 0 ? [] : [`Limits: ${limits.map(limitInWords).join("; ")}.`]),
    ...(over.length === 0 ? [] : [`**Over its limit: ${over.map(({ what }) => what).join(", ")}.**`]),
  ].join("\n\n");
}

// A figure that is none has passed its limit too.
function passed({ limits = [] }: BenchReport): readonly Limit[] {
  return limits.filter(({ measured, most }) => !(measured <= most));
}

function limitInWords({ what, measured, most }: Limit): string {
  return `${what} ${Number(measured.toPrecision(3))}, at most ${most}`;
}

/** The figures of the page that are larger than they were when their section was last written. */
function gotWorse(text: string, fresh: readonly string[]): string {
  const old = new Map(sectionsOf(text).map((section) => [titleOf(section), section]));
  const about = (section: string): string => `- ${titleOf(section).slice(3)}: `;
  const [, said = ""] = text.split(`${worseTitle}\n`);
  const kept = said
    .split("\n")
    .filter((line) => line.startsWith("- ") && !fresh.some((section) => line.startsWith(about(section))));
  const found = fresh.flatMap((section) =>
    worseThan(old.get(titleOf(section)) ?? "", section).map((line) => about(section) + line),
  );
  const lines = wanted.length === 0 ? found : [...kept, ...found];
  const rule =
    "Ratios that are more than a tenth, and times and sizes that are more than half as large again as on the page before.";
  return [worseTitle, rule, lines.length === 0 ? "None." : lines.join("\n")].join("\n\n");
}
