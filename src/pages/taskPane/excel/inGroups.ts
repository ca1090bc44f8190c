/**
 * Things in their order, in groups that together weigh no more than `most`. One that weighs more stands alone.
 *
 * @example
 * inGroups([2, 2, 3], (weight) => weight, 4) // → [[2, 2], [3]]
 */
export function inGroups<Thing>(
  things: readonly Thing[],
  weight: (thing: Thing) => number,
  most: number,
): readonly (readonly Thing[])[] {
  const groups: Thing[][] = [];
  let room = 0;
  for (const thing of things) {
    const weighs = weight(thing);
    const last = groups.at(-1);
    if (last && weighs <= room) last.push(thing);
    else {
      groups.push([thing]);
      room = most;
    }
    room -= weighs;
  }
  return groups;
}
