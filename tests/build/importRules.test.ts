import { execFile } from "node:child_process";
import { copyFileSync, mkdirSync, mkdtempSync, readdirSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join, relative } from "node:path";
import { afterAll, beforeAll, describe, expect, it } from "vitest";

// Every room of the project, and the rooms it may import from: those that stand below the hosts first.
const belowHosts: Readonly<Record<string, readonly string[]>> = {
  "src/cells": [],
  "src/core": ["src/cells"],
  "src/reading": ["src/cells", "src/core"],
  "src/writing": ["src/cells", "src/core"],
  "src/definition": ["src/cells", "src/core", "src/reading", "src/writing"],
  functions: ["src/cells", "src/core", "src/reading", "src/writing", "src/definition"],
  "src/workbook": ["src/cells", "src/writing"],
};
const allBelow = Object.keys(belowHosts);
const hosts = ["excel", "headless", "libreoffice", "sheets"].map((name) => `src/hosts/${name}`);
const makers = "src/workbooks";
const rooms: Readonly<Record<string, readonly string[]>> = {
  ...belowHosts,
  ...Object.fromEntries(hosts.map((host) => [host, allBelow])),
  [makers]: [...allBelow, "src/hosts/headless"],
  "src/pages/parts": allBelow,
  "src/pages/taskPane": [...allBelow, "src/hosts/excel", "src/pages/parts"],
  "src/pages/practice": [...allBelow, "src/hosts/headless", makers, "src/pages/parts"],
  "src/cli": [...allBelow, "src/hosts/headless", makers],
  "src/build": [],
};
/** Builds look at everything; that nobody looks at builds is what is held. */
const mayImportAll = "src/build";

/** Packages that only some rooms may touch. */
const packages: Readonly<Record<string, readonly string[]>> = {
  "date-fns/addDays": ["src/cells"],
  "@date-fns/utc": ["src/cells"],
  "@univerjs/core": ["src/hosts/headless", "src/pages/practice"],
  "node:fs": ["src/workbook", ...hosts, makers, "src/cli"],
};

const names = Object.keys(rooms);
const home = mkdtempSync(join(tmpdir(), "soundfold-rules-"));
afterAll(() => rmSync(home, { recursive: true, force: true }));

interface Probe {
  readonly from: string;
  readonly to: string;
  readonly path: string;
  readonly allowed: boolean;
}

// A file for each pair, at two depths and with each way of importing there is.
const forms = (target: string): string =>
  [
    `import { a } from "${target}";`,
    `import type { B } from "${target}";`,
    `export { c } from "${target}";`,
    `export const d = () => import("${target}");`,
    "export const e = (b: B) => [a, b];",
  ].join("\n");

function probesOf(from: string, to: string, target: (path: string) => string, allowed: boolean): readonly Probe[] {
  const name = to.replaceAll(/[^a-zA-Z]/g, "_");
  return [`${from}/probe_${name}.ts`, `${from}/deep/probe_${name}.ts`].map((path) => {
    mkdirSync(join(home, dirname(path)), { recursive: true });
    writeFileSync(join(home, path), `${forms(target(path))}\n`);
    return { from, to, path, allowed };
  });
}

const pairs = names
  .filter((from) => from !== mayImportAll)
  .flatMap((from) => names.filter((to) => to !== from).map((to) => [from, to] as const));
const roomProbes = pairs.flatMap(([from, to]) =>
  probesOf(from, to, (path) => relative(dirname(path), `${to}/other.ts`), rooms[from]?.includes(to) ?? false),
);
const packageProbes = names
  .filter((from) => from !== mayImportAll)
  .flatMap((from) =>
    Object.entries(packages).flatMap(([name, allowed]) => probesOf(from, name, () => name, allowed.includes(from))),
  );

interface Report {
  readonly diagnostics: readonly { readonly category: string; readonly location: { readonly path: string } }[];
}

/** How often each file breaks a rule, by the file's path. */
function faults(rule: string): Promise<ReadonlyMap<string, number>> {
  const biome = join(process.cwd(), "node_modules", "@biomejs", "biome", "bin", "biome");
  const given = ["lint", "--reporter=json", "--max-diagnostics=none", `--only=${rule}`];
  return new Promise((resolve, reject) => {
    execFile(process.execPath, [biome, ...given], { cwd: home, maxBuffer: 1e9 }, (error, stdout, stderr) => {
      if (stdout === "") return reject(error ?? new Error(stderr));
      const found = new Map<string, number>();
      for (const { category, location } of (JSON.parse(stdout) as Report).diagnostics)
        if (category === `lint/${rule}`) found.set(location.path, (found.get(location.path) ?? 0) + 1);
      resolve(found);
    });
  });
}

let imports: ReadonlyMap<string, number>;
let circles: ReadonlyMap<string, number>;
beforeAll(async () => {
  copyFileSync("biome.json", join(home, "biome.json"));
  mkdirSync(join(home, "src", "build", "round"), { recursive: true });
  writeFileSync(
    join(home, "src/build/round/one.ts"),
    'import { two } from "./two.ts";\nexport const one = () => two;\n',
  );
  writeFileSync(
    join(home, "src/build/round/two.ts"),
    'import { one } from "./one.ts";\nexport const two = () => one;\n',
  );
  imports = await faults("style/noRestrictedImports");
  circles = await faults("suspicious/noImportCycles");
});

describe("the rules of biome.json", () => {
  it("know every room there is", () => {
    const inside = (folder: string) =>
      readdirSync(folder, { withFileTypes: true }).flatMap((entry) =>
        entry.isDirectory() ? [`${folder}/${entry.name}`] : [],
      );
    const there = ["functions", ...inside("src")].flatMap((room) =>
      room === "src/hosts" || room === "src/pages" ? inside(room) : [room],
    );
    expect(there.filter((room) => !names.includes(room))).toEqual([]);
  });

  it.each([
    ["rooms", roomProbes],
    ["packages", packageProbes],
  ] as const)("refuse each import between %s that goes the wrong way, in every form, and no other", (_, probes) => {
    const said = ({ from, to, path }: Probe) => `${from} → ${to} (${imports.get(path) ?? 0}): ${path}`;
    expect(probes.filter(({ allowed, path }) => !allowed && imports.get(path) !== 4).map(said)).toEqual([]);
    expect(probes.filter(({ allowed, path }) => allowed && imports.has(path)).map(said)).toEqual([]);
    expect(probes.some(({ allowed }) => allowed) && probes.some(({ allowed }) => !allowed)).toBe(true);
  });

  it("refuse a circle", () => {
    expect([...circles.keys()].sort()).toEqual(["src/build/round/one.ts", "src/build/round/two.ts"]);
  });
});
