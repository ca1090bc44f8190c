import { stat } from "node:fs/promises";
import { dirname, format, parse } from "node:path";
import { BadInput } from "./badInput.ts";
import { withPlainFileErrors } from "./fileTrouble.ts";

/**
 * Where the worked-out workbook goes: the file named, or the input's name with `-worked-out`.
 *
 * @throws BadInput when it would be the input itself, is of another kind, is there already, cannot be looked at, or has
 * no folder to go to
 * @example
 * await outputFor("farm.xlsx", undefined, false) // → "farm-worked-out.xlsx"
 */
export async function outputFor(input: string, named: string | undefined, replace: boolean): Promise<string> {
  const output = named ?? besides(input);
  const source = await withPlainFileErrors(`${input} cannot be read`, () => stat(input));
  const [from, to] = [parse(input).ext.toLowerCase(), parse(output).ext.toLowerCase()];
  if (from !== to)
    throw new BadInput(`${output} must end in ${from || "nothing"} as ${input} does, or it will not open afterwards.`);
  const look = (path: string) =>
    withPlainFileErrors(`${output} cannot be written`, () => statOrNothing(path), {
      ENAMETOOLONG: "its name is too long; name another output",
    });
  const target = await look(output);
  if (target && target.dev === source.dev && target.ino === source.ino)
    throw new BadInput(`${output} is the input itself, which is never overwritten; name another output.`);
  if (target?.isDirectory()) throw new BadInput(`${output} is a folder; name a file.`);
  if (target && !replace)
    throw new BadInput(`${output} is already there; add --force to replace it, or name another output.`);
  const folder = dirname(output);
  if (!(await look(folder))?.isDirectory()) throw new BadInput(`There is no folder ${folder} to write to.`);
  return output;
}

function besides(input: string): string {
  const { root, dir, name, ext } = parse(input);
  return format({ root, dir, base: `${name}-worked-out${ext}` });
}

const statOrNothing = (path: string) =>
  stat(path).catch((error: unknown) => {
    if (error instanceof Error && "code" in error && (error.code === "ENOENT" || error.code === "ENOTDIR"))
      return undefined;
    throw error;
  });
