import { resolve } from "node:path";
import { type BuildOptions, build } from "esbuild";

/** One program in one text, and the absolute paths of the files whose code is in it. */
export interface Bundle {
  readonly text: string;
  readonly modules: readonly string[];
}

/** Bundles with esbuild, in memory. Options other than these are the caller's. */
export async function bundle(entry: string, options: BuildOptions): Promise<Bundle> {
  const { outputFiles, metafile } = await build({
    ...options,
    entryPoints: [entry],
    bundle: true,
    write: false,
    metafile: true,
  });
  const [made] = outputFiles;
  const [output] = Object.values(metafile.outputs);
  if (made === undefined || output === undefined) throw new Error(`esbuild made nothing of ${entry}`);
  const inputs = Object.entries(output.inputs).filter(([, { bytesInOutput }]) => bytesInOutput > 0);
  return { text: made.text, modules: inputs.map(([path]) => resolve(path)) };
}
