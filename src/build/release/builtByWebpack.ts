import { mkdtempSync, readdirSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join, relative, sep } from "node:path";
import webpack, { type Configuration, type Stats, type StatsModule } from "webpack";
import type { Built } from "./built.ts";

/** What webpack makes of a configuration, which is told the folder to write to. */
export async function builtByWebpack(configuration: (folder: string) => Configuration): Promise<Built> {
  const folder = mkdtempSync(join(tmpdir(), "soundfold-release-"));
  try {
    const stats = await run(configuration(folder));
    return { files: filesIn(folder), modules: moduleFiles(stats) };
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

const run = (configuration: Configuration): Promise<Stats> =>
  new Promise((resolve, reject) => {
    const compiler = webpack(configuration);
    if (!compiler) throw new Error("webpack refused its configuration");
    compiler.run((error, stats) => {
      compiler.close((unclosed) => {
        if (error ?? unclosed) reject(error ?? unclosed);
        else if (stats === undefined || stats.hasErrors()) reject(new Error(stats?.toString("errors-only")));
        else resolve(stats);
      });
    });
  });

function filesIn(folder: string): ReadonlyMap<string, Uint8Array> {
  const entries = readdirSync(folder, { recursive: true, withFileTypes: true }).filter((entry) => entry.isFile());
  const paths = entries.map((entry) => join(entry.parentPath, entry.name));
  return new Map(paths.map((path) => [relative(folder, path).split(sep).join("/"), readFileSync(path)]));
}

/** Modules that webpack put into a bundle; what the minimiser still drops is counted too, never too little. */
function moduleFiles(stats: Stats): readonly string[] {
  const { modules = [] } = stats.toJson({
    all: false,
    modules: true,
    nestedModules: true,
    modulesSpace: Number.POSITIVE_INFINITY,
    nestedModulesSpace: Number.POSITIVE_INFINITY,
    cachedModules: true,
    dependentModules: true,
  });
  return [...new Set(modules.flatMap(withNested))];
}

const withNested = (module: StatsModule): readonly string[] => [
  ...(module.nameForCondition ? [module.nameForCondition] : []),
  ...(module.modules ?? []).flatMap(withNested),
];
