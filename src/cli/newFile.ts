import { access, stat } from "node:fs/promises";
import { dirname, extname } from "node:path";
import { BadInput } from "./badInput.ts";

const openedBy = { ".xlsx": "spreadsheets", ".html": "browsers" } as const;

/** Whether the name of a file ends in one of these, whatever its capitals. */
export const endsIn = (path: string, endings: readonly string[]): boolean =>
  endings.includes(extname(path).toLowerCase());

/**
 * Checks that a workbook can be written there without anything being lost.
 *
 * @throws BadInput when the name does not end as its kind does, something is there already, or the folder is not
 */
export async function newFile(path: string, kind: keyof typeof openedBy = ".xlsx"): Promise<void> {
  if (extname(path).toLowerCase() !== kind)
    throw new BadInput(`${path} must end in ${kind}, or ${openedBy[kind]} will not open it.`);
  await freePlace(path);
}

/**
 * Checks that a file can be written there without anything being lost.
 *
 * @throws BadInput when something is there already, or the folder is not
 */
export async function freePlace(path: string): Promise<void> {
  if (await isThere(path))
    throw new BadInput(`${path} is already there and is never replaced; name another with --out.`);
  const folder = dirname(path);
  if (!(await isFolder(folder))) throw new BadInput(`There is no folder ${folder} to write to.`);
}

export const isFolder = (path: string): Promise<boolean> =>
  stat(path).then(
    (found) => found.isDirectory(),
    () => false,
  );

const isThere = (path: string): Promise<boolean> =>
  access(path).then(
    () => true,
    () => false,
  );
