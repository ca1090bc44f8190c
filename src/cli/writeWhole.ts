import { rename, rm, writeFile } from "node:fs/promises";
import { join, parse } from "node:path";
import { clearLeftovers, passingName } from "./clearLeftovers.ts";
import { withPlainFileErrors } from "./fileTrouble.ts";

/**
 * Writes a file whole or not at all: under another name beside it first, then renamed.
 *
 * @returns files that killed runs had left behind beside it, which were removed
 * @throws BadInput when it cannot be written; then nothing is left behind
 */
export async function writeWhole(path: string, bytes: Uint8Array): Promise<readonly string[]> {
  const { dir, base } = parse(path);
  const passing = join(dir, passingName(base, process.pid));
  const removed = await clearLeftovers(path);
  await withPlainFileErrors(`${path} cannot be written`, async () => {
    try {
      await writeFile(passing, bytes, { flag: "wx", flush: true });
      await rename(passing, path);
    } catch (error) {
      await rm(passing, { force: true });
      throw error;
    }
  });
  return removed;
}
