import { access, stat } from "node:fs/promises";
import { dirname, extname } from "node:path";
import { BadInput } from "./badInput.ts";

const openedBy = { ".xlsx": "spreadsheets", ".html": "browsers" } as const;

/**
 * Checks that a workbook can be written there without anything being lost.
 *
 * @throws BadInput when the name does not end as its kind does, something is there already, or the folder is not
 */
export async function newFile(path: string, kind: keyof typeof openedBy = ".xlsx"): Promise<void> {
  if (extname(path).toLowerCase() !== kind)
    throw new BadInput(`${path} must end in ${kind}, or ${openedBy[kind]} will not open it.`);
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
