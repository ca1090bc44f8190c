import { execFileSync } from "node:child_process";
import { chmodSync, copyFileSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import process from "node:process";

/**
 * The tarball of the command, byte for byte as `npm pack` makes it, without touching what stands in dist.
 *
 * @param command - what belongs into dist/cli, by name
 */
export function commandTarball(command: ReadonlyMap<string, string | Uint8Array>): Uint8Array {
  const home = mkdtempSync(join(tmpdir(), "soundfold-command-"));
  try {
    const { files } = JSON.parse(readFileSync("package.json", "utf8")) as { readonly files: readonly string[] };
    const put = (file: string, write: (path: string) => void, mode = 0o644): void => {
      const path = join(home, "package", file);
      mkdirSync(dirname(path), { recursive: true });
      write(path);
      chmodSync(path, mode);
    };
    for (const file of ["package.json", "README.md", ...files.filter((name) => name !== "dist/cli")])
      put(file, (path) => copyFileSync(file, path));
    for (const [name, content] of command)
      put(`dist/cli/${name}`, (path) => writeFileSync(path, content), name.endsWith(".js") ? 0o755 : 0o644);
    // What npm would build first is there already.
    const given = ["pack", "--json", "--ignore-scripts", "--pack-destination", home];
    const said = execFileSync("npm", given, {
      cwd: join(home, "package"),
      encoding: "utf8",
      shell: process.platform === "win32",
      stdio: ["ignore", "pipe", "ignore"],
    });
    const [packed] = JSON.parse(said.slice(said.indexOf("["))) as { readonly filename: string }[];
    if (!packed) throw new Error("npm packed nothing");
    return readFileSync(join(home, packed.filename));
  } finally {
    rmSync(home, { recursive: true });
  }
}
