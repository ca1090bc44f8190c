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
  const byName = new Map<string, Writable<NamedCount>>();
  // Each spelling is folded once: a flock's name comes in many rows.
  const bySpelling = new Map<string, Writable<NamedCount>>();
  for (let row = 0; row < names.length; row++) {
    const written = names[row] as string;
    let count = bySpelling.get(written);
    if (count === undefined) {
      const name = written.trim().replace(/\s+/g, " ");
      const key = name.toLowerCase();
      count = byName.get(key) ?? { name, lame: 0, seen: 0 };
      byName.set(key, count);
      bySpelling.set(written, count);
    }
    count.lame += lame[row] ?? 0;
    count.seen += seen[row] ?? 0;
  }
  return [...byName.values()];
}

type Writable<T> = { -readonly [K in keyof T]: T[K] };
