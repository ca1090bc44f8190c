import { BadInput } from "./badInput.ts";

/** More fits into a cell, but not onto a printed page or into a heading. */
const longest = 60;

/**
 * Checks that a name can stand in a cell as it was given.
 *
 * @throws BadInput when it is long, or holds a line break, a tab or another sign that cannot be seen
 */
export function plainName(option: string, name: string): string {
  if (/\p{Cc}/u.test(name))
    throw new BadInput(
      `${option} has a name with a line break, a tab or another sign that cannot be seen; type it anew.`,
    );
  const length = [...name].length;
  if (length > longest)
    throw new BadInput(`${option} has a name of ${length} letters, "${name.slice(0, 20)}…"; at most ${longest} fit.`);
  return name;
}
