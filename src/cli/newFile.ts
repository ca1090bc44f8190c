import { access, stat } from "node:fs/promises";
import { dirname, extname } from "node:path";
import { BadInput } from "./badInput.ts";

/**
 * Checks that a workbook can be written there without anything being lost.
 *
 * @throws BadInput when the name does not end in .xlsx, something is there already, or the folder is not
 */
export async function newFile(path: string): Promise<void> {
  if (extname(path).toLowerCase() !== ".xlsx")
    throw new BadInput(`${path} must end in .xlsx, or spreadsheets will not open it.`);
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
