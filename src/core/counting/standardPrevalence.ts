import { nothingToReport, Problem } from "../../cells/problem.ts";
import { normalScore } from "../statistics/normalScore.ts";
import { nameKey } from "../words/nameKey.ts";
import { checkCounts } from "./checkCounts.ts";
import type { ShareWithLimits } from "./truePrevalence.ts";
import { fewestForRange } from "./weightedPrevalence.ts";
import { type WeightedPart, weightedShare } from "./weightedShare.ts";

/** The counts of several flocks, each by age or another grouping; a flock and a group a row. */
export interface GroupedCounts {
  readonly flocks: readonly string[];
  readonly groups: readonly string[];
  readonly lame: readonly number[];
  readonly seen: readonly number[];
}

/** The make-up that all flocks are turned to: a group a row, with its sheep or its share of them. */
export interface StandardMakeUp {
  readonly groups: readonly string[];
  readonly sheep: readonly number[];
}

export interface StandardFlock extends Partial<ShareWithLimits> {
  readonly flock: string;
  readonly seen: number;
  /** As seen, whatever the make-up; undefined where no sheep were seen. */
  readonly asSeen: number | undefined;
  /** The share in a flock of the standard make-up; undefined where a group of it was not seen. */
  readonly share?: number;
  readonly note: string;
}

/**
 * Each flock's share lame, had it the same make-up as the others: directly standardised.
 *
 * A flock of which no sheep were seen in a group that the standard holds gets no share: nothing is known of that group.
 * One of which fewer than ten sheep were seen gets no range.
 *
 * @param counts a row for each flock and group; rows of the same are added up
 * @param standard the make-up; left out, that of all sheep seen in all flocks
 * @param confidence 0 < confidence < 1
 * @returns flocks in order of first appearance
 * @throws Problem for a group that the standard does not name, a standard that names one twice or holds no sheep; #N/A when no sheep were seen
 * @source Direct standardisation: Armitage, Berry & Matthews, Statistical Methods in Medical Research (from memory)
 * @example
 * standardPrevalence({ flocks: ["A", "A"], groups: ["ewes", "lambs"], lame: [1, 3], seen: [10, 30] },
 *   { groups: ["ewes", "lambs"], sheep: [1, 1] }, 0.95)[0]?.share // → 0.1
 */
export function standardPrevalence(
  counts: GroupedCounts,
  standard: StandardMakeUp | undefined,
  confidence: number,
): readonly StandardFlock[] {
  checkCounts(counts.lame, counts.seen);
  const table = tallyOf(counts);
  const makeUp = standard === undefined ? ofAllSeen(table) : named(standard, counts.groups);
  const z = normalScore(confidence);
  // By name, so that the rows may stand in any order.
  const wanted = [...makeUp].filter(([, { weight }]) => weight > 0).sort(([, a], [, b]) => (a.name < b.name ? -1 : 1));
  return [...table.values()].map(({ name, groups }) => {
    const rows = [...groups.values()];
    const [lame, seen] = rows.reduce(([x, n], group) => [x + group.lame, n + group.seen], [0, 0]);
    const flock = { flock: name, seen, asSeen: seen === 0 ? undefined : lame / seen };
    const isSeen = (key: string): boolean => (groups.get(key)?.seen ?? 0) > 0;
    const held = [...groups.keys()].filter((key) => (makeUp.get(key)?.weight ?? 0) > 0 && isSeen(key));
    if (held.length < wanted.length) return { ...flock, note: noneSeen(wanted, isSeen, wanted.length - held.length) };
    const parts = wanted.flatMap(([key, { weight }]): WeightedPart[] => {
      const group = groups.get(key);
      return group ? [{ weight, lame: group.lame, seen: group.seen, left: 1 }] : [];
    });
    const { share, low, high } = weightedShare(parts, z);
    if (seen < fewestForRange) return { ...flock, share, note: `${seen} sheep seen, too few for a range` };
    return { ...flock, share, low, high, note: "" };
  });
}

const mostNamed = 5;

/** The groups that were not seen; of many, the first few by name, since each flock has a note of its own. */
function noneSeen(
  wanted: readonly (readonly [key: string, group: { readonly name: string }])[],
  isSeen: (key: string) => boolean,
  missing: number,
): string {
  const named: string[] = [];
  for (const [key, { name }] of wanted) {
    if (named.length === mostNamed) break;
    if (!isSeen(key)) named.push(name);
  }
  const others = missing > named.length ? ` and ${missing - named.length} more` : "";
  return `no ${named.join(", ")}${others} seen`;
}

interface GroupCount {
  readonly name: string;
  lame: number;
  seen: number;
}

type ByFlock = ReadonlyMap<string, { readonly name: string; readonly groups: Map<string, GroupCount> }>;

const shown = (name: string): string => name.trim().replace(/\s+/g, " ");

function tallyOf({ flocks, groups, lame, seen }: GroupedCounts): ByFlock {
  const table = new Map<string, { name: string; groups: Map<string, GroupCount> }>();
  flocks.forEach((flock, index) => {
    const row = table.get(nameKey(flock)) ?? { name: shown(flock), groups: new Map<string, GroupCount>() };
    table.set(nameKey(flock), row);
    const group = groups[index] ?? "";
    const count = row.groups.get(nameKey(group)) ?? { name: shown(group), lame: 0, seen: 0 };
    count.lame += lame[index] ?? 0;
    count.seen += seen[index] ?? 0;
    row.groups.set(nameKey(group), count);
  });
  return table;
}

type MakeUp = ReadonlyMap<string, { readonly name: string; readonly weight: number }>;

function ofAllSeen(table: ByFlock): MakeUp {
  const sheep = new Map<string, { name: string; weight: number }>();
  for (const { groups } of table.values())
    for (const [key, { name, seen }] of groups) {
      const group = sheep.get(key) ?? { name, weight: 0 };
      group.weight += seen;
      sheep.set(key, group);
    }
  return inShares(sheep, () => nothingToReport("no sheep were seen, so there is no share", { argument: "seen" }));
}

function named({ groups, sheep }: StandardMakeUp, used: readonly string[]): MakeUp {
  const makeUp = new Map<string, { name: string; weight: number }>();
  groups.forEach((group, index) => {
    if (makeUp.has(nameKey(group))) {
      throw new Problem(`${shown(group)} stands here twice; give each group once`, {
        argument: "standard_groups",
        index,
      });
    }
    makeUp.set(nameKey(group), { name: shown(group), weight: sheep[index] ?? 0 });
  });
  used.forEach((group, index) => {
    if (!makeUp.has(nameKey(group))) {
      throw new Problem(
        `${shown(group)} is not among standard_groups; add it there, with 0 sheep if it is not to count`,
        {
          argument: "groups",
          index,
        },
      );
    }
  });
  const empty = (): Problem =>
    new Problem("the standard holds no sheep; enter the sheep of each group, or their share", {
      argument: "standard_sheep",
    });
  return inShares(makeUp, empty);
}

function inShares(sheep: MakeUp, whenEmpty: () => Problem): MakeUp {
  const all = [...sheep.values()].reduce((sum, { weight }) => sum + weight, 0);
  if (all === 0) throw whenEmpty();
  return new Map([...sheep].map(([key, { name, weight }]) => [key, { name, weight: weight / all }]));
}
