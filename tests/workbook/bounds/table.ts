import { existsSync, readFileSync, writeFileSync } from "node:fs";
import { resolve } from "node:path";
import { fileURLToPath } from "node:url";
import { bounds, runKind, type Took } from "./runKind.ts";
import { worstKinds } from "./worstKinds.ts";

// Writes docs/bounds.md: `npx tsx tests/workbook/bounds/table.ts` measures this checkout, `--before FOLDER` another one,
// whose figures are kept beside this file; `--kind TEXT` only the kinds with that text in their names.

type Figures = Readonly<Record<string, Omit<Took, "told"> & { readonly ended: boolean; readonly left: number }>>;

const beside = (name: string): string => fileURLToPath(new URL(name, import.meta.url));
const files = { before: beside("before.json"), after: beside("after.json") } as const;
const page = beside("../../../docs/bounds.md");

const figuresOf = (file: string): Figures =>
  existsSync(file) ? (JSON.parse(readFileSync(file, "utf8")) as Figures) : {};

const option = (name: string): string | undefined => {
  const at = process.argv.indexOf(name);
  return at === -1 ? undefined : process.argv[at + 1];
};

const folder = option("--before");
const file = folder === undefined ? files.after : files.before;
for (const kind of worstKinds.filter(({ name }) => name.includes(option("--kind") ?? ""))) {
  const { told, ...took } = await runKind(kind, folder === undefined ? undefined : resolve(folder));
  const figures = { ...took, ended: told !== undefined, left: told?.left ?? 0 };
  writeFileSync(file, `${JSON.stringify({ ...figuresOf(file), [kind.name]: figures }, null, 2)}\n`);
  console.log(kind.name, figures);
}

const [before, after] = [figuresOf(files.before), figuresOf(files.after)];

// What was seen of kinds like these before they were measured in this way.
const seen: Readonly<Record<string, string>> = {
  "40 COUNTIF over a whole column": "no end",
  "a running total down 20,000 rows": "of 8,000 rows 45 s and 4 GB",
  "2,500 sheets": "of 3,000 sheets 5.3 s and 260 MB",
  "99,999 names with INDIRECT": "over a minute",
  "ten array formulas over whole columns": "over a minute",
};

const time = (took: Figures[string] | undefined): string => {
  if (!took) return "not measured";
  if (took.ended) return `${took.seconds.toFixed(1)} s`;
  return took.seconds >= bounds.seconds ? `over ${bounds.seconds} s, ended` : brokeOff(took);
};
const brokeOff = ({ trouble, seconds, megabytes }: Figures[string]): string =>
  trouble !== ""
    ? `nothing written: ${trouble.replace(/^\w*Error: /, "")}`
    : `over ${Math.round(megabytes / 1000)} GB at ${seconds.toFixed(0)} s, ended`;
const memory = (took: Figures[string] | undefined): string =>
  took ? `${Math.round(took.megabytes / 10) * 10} MB` : "not measured";
const outcome = (took: Figures[string] | undefined): string => {
  if (!took?.ended) return "";
  return took.left === 0 ? "all worked out" : `${took.left} left as saved, with the reason`;
};

const rows = worstKinds.map(({ name, make }) => {
  const [old, now] = [before[name], after[name]];
  const size = Math.round(make().length / 1000);
  return `| ${name} | ${size} kB | ${old ? time(old) : (seen[name] ?? "not measured")} | ${old ? memory(old) : ""} | ${time(now)} | ${memory(now)} | ${outcome(now)} |`;
});
const worst = (of: (took: Figures[string]) => number): number => Math.max(...Object.values(after).map(of));

writeFileSync(
  page,
  `# Small workbooks that ask for much

Written by \`npx tsx tests/workbook/bounds/table.ts\`.

A workbook under 1 MB takes at most ${bounds.seconds} s of the processor and ${bounds.megabytes / 1000} GB of memory: it is worked out, or the formulas that would take more keep their saved values and are named with the reason. \`tests/workbook/bounds/bounds.test.ts\` holds each of these kinds to it, and looks at what it ends in.

| kind of workbook | size | before | memory before | now | memory now | outcome now |
| --- | --- | --- | --- | --- | --- | --- |
${rows.join("\n")}

Everything is worked out (\`--all\`), in a process of its own. The time is that of the processor on a machine that other work shared, with starting the program from its source (about 2 s of it); the memory is the most of the whole process. "Before" is the program of 2026-11-26, which was ended at ${bounds.seconds} s. The worst now: ${worst(({ seconds }) => seconds).toFixed(1)} s, and ${Math.round(worst(({ megabytes }) => megabytes) / 10) * 10} MB.
`,
);
