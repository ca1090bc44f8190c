import { Problem } from "../../cells/problem.ts";

/** A column of names and what the user calls it. */
export interface NameColumn {
  readonly argument: string;
  readonly names: readonly string[];
}

export interface NamedPlaces {
  /** Each name as first written, in order of first appearance. */
  readonly names: readonly string[];
  /** For each row the place of its name among them. */
  readonly placeOf: Int32Array;
}

/**
 * Which of the different names stands in each row.
 *
 * Capitals and spaces do not make another name: "Low Field" and "low field " are one.
 *
 * @param column the names, one a row
 * @param height how many rows there are
 * @throws Problem when the column has another height
 * @example
 * placesByName({ argument: "groups", names: ["A", "b", "a "] }, 3).names // → ["A", "b"]
 * [...placesByName({ argument: "groups", names: ["A", "b", "a "] }, 3).placeOf] // → [0, 1, 0]
 */
export function placesByName({ argument, names: written }: NameColumn, height: number): NamedPlaces {
  if (written.length !== height) {
    throw new Problem(`${argument} has ${written.length} rows and seen has ${height}; give both the same rows`, {
      argument,
    });
  }
  const names: string[] = [];
  const placeOf = new Int32Array(height);
  const byName = new Map<string, number>();
  // Each spelling is folded once: a name comes in many rows.
  const bySpelling = new Map<string, number>();
  for (let row = 0; row < height; row++) {
    const spelling = written[row] as string;
    let place = bySpelling.get(spelling);
    if (place === undefined) {
      const name = spelling.trim().replace(/\s+/g, " ");
      place = byName.get(name.toLowerCase()) ?? names.length;
      if (place === names.length) {
        byName.set(name.toLowerCase(), place);
        names.push(name);
      }
      bySpelling.set(spelling, place);
    }
    placeOf[row] = place;
  }
  return { names, placeOf };
}
