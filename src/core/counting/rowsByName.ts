import { Problem } from "../../cells/problem.ts";
import type { NameColumn } from "./tallyByName.ts";

/** The rows that stand under one name. */
export interface NamedRows {
  /** As first written. */
  readonly name: string;
  readonly rows: readonly number[];
}

/**
 * Which rows belong to which name, in order of first appearance.
 *
 * Capitals and spaces do not make another name: "Low Field" and "low field " are one.
 *
 * @param column the names, one a row
 * @param height how many rows there are
 * @throws Problem when the column has another height
 * @example
 * rowsByName({ argument: "groups", names: ["A", "b", "a "] }, 3) // → [{ name: "A", rows: [0, 2] }, { name: "b", rows: [1] }]
 */
export function rowsByName({ argument, names }: NameColumn, height: number): readonly NamedRows[] {
  if (names.length !== height) {
    throw new Problem(`${argument} has ${names.length} rows and seen has ${height}; give both the same rows`, {
      argument,
    });
  }
  const byName = new Map<string, { name: string; rows: number[] }>();
  const bySpelling = new Map<string, number[]>();
  names.forEach((written, row) => {
    let rows = bySpelling.get(written);
    if (rows === undefined) {
      const name = written.trim().replace(/\s+/g, " ");
      const key = name.toLowerCase();
      const known = byName.get(key) ?? { name, rows: [] };
      byName.set(key, known);
      rows = known.rows;
      bySpelling.set(written, rows);
    }
    rows.push(row);
  });
  return [...byName.values()];
}
