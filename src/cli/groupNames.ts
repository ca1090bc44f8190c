import { wholeGroup } from "../core/counting/prevalenceByGroup.ts";
import { BadInput } from "./badInput.ts";
import { plainName } from "./plainName.ts";

/**
 * Reads group names given as one word with commas.
 *
 * @param most - how many a workbook has room for
 * @throws BadInput when a name is blank, stands twice, cannot stand in a cell or is that of the total, or there are too many
 * @example
 * groupNames("ewes, lambs", 12) // → ["ewes", "lambs"]
 */
export function groupNames(given: string | undefined, most: number): readonly string[] {
  if (given === undefined) return [];
  const names = given.split(",").map((name) => plainName("--groups", name.trim()));
  if (names.includes("")) throw new BadInput(`--groups "${given}" has a blank name; write them as a,b,c.`);
  const seen = new Set<string>();
  for (const name of names) {
    const key = name.toLowerCase();
    if (seen.has(key)) throw new BadInput(`--groups names "${name}" twice; every group needs a name of its own.`);
    if (key === wholeGroup)
      throw new BadInput(
        `--groups names "${name}", which is what the line of all groups is called; take another word.`,
      );
    seen.add(key);
  }
  if (names.length > most) throw new BadInput(`--groups names ${names.length} groups; there is room for ${most}.`);
  return names;
}
