import { Problem } from "../../cells/problem.ts";

/** The sheep counted under one name. */
export interface NamedCount {
  /** As first written. */
  readonly name: string;
  readonly lame: number;
  readonly seen: number;
}

/** A column of names and what the user calls it. */
export interface NameColumn {
  readonly argument: string;
  readonly names: readonly string[];
}

/**
 * Adds up lame and seen sheep by name, in order of first appearance.
 *
 * Capitals and spaces do not make another name: "Low Field" and "low field " are one.
 *
 * @param column the names, one a row
 * @param lame lame sheep a row
 * @param seen sheep seen a row
 * @throws Problem when the columns differ in length
 * @example
 * tallyByName({ argument: "flocks", names: ["A", "a "] }, [1, 2], [10, 10]) // → [{ name: "A", lame: 3, seen: 20 }]
 */
export function tallyByName(
  column: NameColumn,
  lame: readonly number[],
  seen: readonly number[],
): readonly NamedCount[] {
  const { argument, names } = column;
  if (names.length !== seen.length) {
    throw new Problem(`${argument} has ${names.length} rows and seen has ${seen.length}; give both the same rows`, {
      argument,
    });
  }
  const byName = new Map<string, { name: string; lame: number; seen: number }>();
  names.forEach((written, index) => {
    const name = written.trim().replace(/\s+/g, " ");
    const count = byName.get(name.toLowerCase()) ?? { name, lame: 0, seen: 0 };
    count.lame += lame[index] ?? 0;
    count.seen += seen[index] ?? 0;
    byName.set(name.toLowerCase(), count);
  });
  return [...byName.values()];
}
