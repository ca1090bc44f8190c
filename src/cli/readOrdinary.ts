import { readFile, stat } from "node:fs/promises";
import { BadInput } from "./badInput.ts";
import { withPlainFileErrors } from "./fileTrouble.ts";

/**
 * Reads a file that is one: a pipe or a device may have no end, and would be waited for.
 *
 * @param trouble - for example `farm.xlsx cannot be read`
 * @throws BadInput when it is none, or cannot be read
 */
export async function readOrdinary(path: string, trouble: string): Promise<Uint8Array> {
  return withPlainFileErrors(trouble, async () => {
    const found = await stat(path);
    if (!found.isFile() && !found.isDirectory()) throw new BadInput(`${trouble}: it is no ordinary file.`);
    return readFile(path);
  });
}
