import { readdir, rm, stat } from "node:fs/promises";
import { join, parse } from "node:path";

// The folder may be shared with another computer, whose processes cannot be seen from here; no write takes this long.
const untouchedFor = 10 * 60 * 1000;

/** The name under which a file is written before it is whole. */
export const passingName = (base: string, process: number): string => `.${base}.${process}.part`;

/**
 * Removes what runs that were killed left behind while they wrote this file: only files with exactly the name that such
 * a run gives, of a process that is no more, and not touched for ten minutes.
 *
 * @returns the names of the files removed
 */
export async function clearLeftovers(path: string): Promise<readonly string[]> {
  const { dir, base } = parse(path);
  const folder = dir === "" ? "." : dir;
  const removed: string[] = [];
  // Tidying is no reason to fail: what cannot be looked at or removed stays.
  for (const name of await readdir(folder).catch(() => [])) {
    const process = processIn(name, base);
    if (process === undefined || isRunning(process)) continue;
    const found = await stat(join(folder, name)).catch(() => undefined);
    if (!found?.isFile() || Date.now() - found.mtimeMs < untouchedFor) continue;
    const gone = await rm(join(folder, name)).then(
      () => true,
      () => false,
    );
    if (gone) removed.push(name);
  }
  return removed;
}

function processIn(name: string, base: string): number | undefined {
  const digits = /\.([1-9]\d{0,9})\.part$/.exec(name)?.[1];
  return digits !== undefined && name === passingName(base, Number(digits)) ? Number(digits) : undefined;
}

function isRunning(id: number): boolean {
  // A file of this very process would be one of an earlier process of the same number.
  if (id === process.pid) return false;
  try {
    process.kill(id, 0);
    return true;
  } catch (error) {
    // Not being allowed to ask means that it is there.
    return !(error instanceof Error && "code" in error && error.code === "ESRCH");
  }
}
