import { lstat, readlink, rename, rm, writeFile } from "node:fs/promises";
import { dirname, join, parse, resolve } from "node:path";
import { clearLeftovers, passingName } from "./clearLeftovers.ts";
import { withPlainFileErrors } from "./fileTrouble.ts";

// Windows lets no file be replaced that is open.
const open = "it may be open in another program; close it there, or name another output";
const inTheWay = { EPERM: open, EBUSY: open };

/**
 * Writes a file whole or not at all: under another name beside it first, then renamed.
 *
 * @returns files that killed runs had left behind beside it, which were removed
 * @throws BadInput when it cannot be written; then nothing is left behind
 */
export const writeWhole = (path: string, bytes: Uint8Array): Promise<readonly string[]> =>
  writeThrough(path, (passing, write) => write(passing, bytes));

type Write = (passing: string, bytes: Uint8Array) => Promise<void>;

/**
 * The same for a file that something else writes, under the name that it is given.
 *
 * @returns as writeWhole
 * @throws BadInput as writeWhole
 */
export async function writeThrough(
  path: string,
  writeTo: (passing: string, write: Write) => Promise<void>,
): Promise<readonly string[]> {
  const trouble = `${path} cannot be written`;
  const target = await withPlainFileErrors(trouble, () => behindLinks(path));
  const { dir, base } = parse(target);
  const passing = join(dir, passingName(base, process.pid));
  const removed = await clearLeftovers(target);
  const write: Write = (name, bytes) =>
    withPlainFileErrors(trouble, () => writeFile(name, bytes, { flag: "wx", flush: true }));
  try {
    await writeTo(passing, write);
    await withPlainFileErrors(trouble, () => rename(passing, target), inTheWay);
  } catch (error) {
    // The trouble that came first is the one to be told.
    await rm(passing, { force: true }).catch(() => undefined);
    throw error;
  }
  return removed;
}

// As many as the system itself follows (path_resolution(7)).
const mostLinks = 40;

/** The file that a link leads to, there or not: a link stays, and what it names is written. */
async function behindLinks(path: string): Promise<string> {
  let at = path;
  for (let links = 0; links < mostLinks; links += 1) {
    const found = await lstat(at).catch(() => undefined);
    if (!found?.isSymbolicLink()) return at;
    at = resolve(dirname(at), await readlink(at));
  }
  throw Object.assign(new Error(`${path} leads in a circle`), { code: "ELOOP" });
}
