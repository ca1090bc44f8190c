import { backward, cholesky, forward, type Triangle } from "./cholesky.ts";

/** Animals whose end lies somewhere among the points of up to two stretches, `from` up to, not including, `to`. */
export interface SpanClass {
  readonly animals: number;
  readonly stretches: readonly (readonly [from: number, to: number])[];
}

export interface SpanMasses {
  /** The share of animals that end at each point; they add up to 1. */
  readonly masses: Float64Array;
  /** Variance of the sum of the masses of the points before `to`; undefined where the records do not settle it. */
  readonly varianceBefore: (to: number) => number | undefined;
}

/**
 * The masses at points in time under which what was recorded is likeliest: the non-parametric maximum of the likelihood for
 * ends that are known only to lie between two looks.
 *
 * Turnbull's self-consistency steps, which cannot go astray, and then Newton's steps for the points that keep a mass, which give
 * the last digits and the information matrix. Reached when no point would gain (the condition of Gentleman & Geyer).
 *
 * @param points how many there are
 * @param classes what is known of the animals; every stretch holds a point
 * @source Turnbull 1976, J R Stat Soc B 38:290; Gentleman & Geyer 1994, Biometrika 81:618; Hudgens, Satten & Longini 2001,
 *   Biometrics 57:74 (with a competing end)
 * @example
 * [...spanMasses(2, [{ animals: 1, stretches: [[0, 1]] }, { animals: 1, stretches: [[1, 2]] }]).masses] // → [0.5, 0.5]
 */
export function spanMasses(points: number, classes: readonly SpanClass[]): SpanMasses {
  const animals = classes.reduce((sum, one) => sum + one.animals, 0);
  let masses: Float64Array = new Float64Array(points).fill(1 / points);
  for (let round = 0; round < mostRounds; round++) {
    for (let step = 0; step < stepsARound; step++) masses = selfConsistent(masses, classes, animals);
    const polished = newton(masses, classes, animals);
    if (polished !== undefined && gain(polished.masses, classes, animals) < settled) return polished;
    if (polished === undefined && gain(masses, classes, animals) < settledWithoutNewton) break;
  }
  return { masses, varianceBefore: () => undefined };
}

const stepsARound = 100;
const mostRounds = 200;
const settled = 1e-9;
const settledWithoutNewton = 1e-9;
/** A mass below this is none: no record of a thousand animals could tell. */
const noMass = 1e-7;

/** How many animals each point would explain, were its mass raised: `animals` at a point that keeps a mass. */
function pulls(masses: Float64Array, classes: readonly SpanClass[]): Float64Array {
  const upTo = new Float64Array(masses.length + 1);
  masses.forEach((mass, point) => {
    upTo[point + 1] = (upTo[point] as number) + mass;
  });
  const change = new Float64Array(masses.length + 1);
  for (const { animals, stretches } of classes) {
    const share = animals / chanceOf(stretches, upTo);
    for (const [from, to] of stretches) {
      change[from] = (change[from] as number) + share;
      change[to] = (change[to] as number) - share;
    }
  }
  const pull = new Float64Array(masses.length);
  let sum = 0;
  for (let point = 0; point < pull.length; point++) {
    sum += change[point] as number;
    pull[point] = sum;
  }
  return pull;
}

const chanceOf = (stretches: SpanClass["stretches"], upTo: Float64Array): number =>
  stretches.reduce((sum, [from, to]) => sum + (upTo[to] as number) - (upTo[from] as number), 0);

const selfConsistent = (masses: Float64Array, classes: readonly SpanClass[], animals: number): Float64Array => {
  const pull = pulls(masses, classes);
  return masses.map((mass, point) => (mass * (pull[point] as number)) / animals);
};

/** The most that any point would gain, as a share; 0 or a little more at the maximum. */
const gain = (masses: Float64Array, classes: readonly SpanClass[], animals: number): number =>
  pulls(masses, classes).reduce((most, pull) => Math.max(most, pull / animals - 1), 0);

function newton(start: Float64Array, classes: readonly SpanClass[], animals: number): SpanMasses | undefined {
  let masses = start.map((mass) => (mass < noMass ? 0 : mass));
  let kept: number[] = [];
  let factor: Triangle | undefined;
  for (let turn = 0; turn < 50; turn++) {
    kept = [...masses.keys()].filter((point) => (masses[point] as number) > 0);
    if (classes.some(({ stretches }) => !kept.some((at) => stretches.some(([from, to]) => at >= from && at < to)))) {
      return undefined;
    }
    factor = cholesky(information(masses, classes, kept));
    if (factor === undefined) return undefined;
    const pull = pulls(masses, classes);
    const step = backward(
      factor,
      forward(
        factor,
        kept.map((point) => (pull[point] as number) - animals),
      ),
    );
    const part = step.reduce((least, by, index) => {
      const mass = masses[kept[index] as number] as number;
      return by < 0 ? Math.min(least, -mass / by) : least;
    }, 1);
    const next = masses.slice();
    kept.forEach((point, index) => {
      const mass = (masses[point] as number) + part * (step[index] as number);
      // The mass that stops the step is none.
      next[point] = mass < 1e-15 ? 0 : mass;
    });
    masses = next;
    if (part === 1 && step.every((by) => Math.abs(by) < 1e-13)) break;
  }
  const places = kept;
  const lower = factor as Triangle;
  return {
    masses,
    varianceBefore(to) {
      const before = places.reduce((sum, point) => sum + (point < to ? (masses[point] as number) : 0), 0);
      const half = forward(
        lower,
        places.map((point) => (point < to ? 1 : 0)),
      );
      return Math.max(half.reduce((sum, part) => sum + part * part, 0) - (before * before) / animals, 0);
    },
  };
}

/** Second derivatives of the logarithm of the likelihood, with the sign turned, among the points that keep a mass. */
function information(masses: Float64Array, classes: readonly SpanClass[], kept: readonly number[]) {
  const size = kept.length;
  const upTo = new Float64Array(masses.length + 1);
  const placeOf = new Int32Array(masses.length + 1);
  masses.forEach((mass, point) => {
    upTo[point + 1] = (upTo[point] as number) + mass;
    placeOf[point + 1] = (placeOf[point] as number) + (mass > 0 ? 1 : 0);
  });
  // Each class adds the same to rectangles of the matrix: corners first, sums of them after.
  const corners = Array.from({ length: size + 1 }, () => new Float64Array(size + 1));
  const add = (row: number, column: number, by: number) => {
    const line = corners[row] as Float64Array;
    line[column] = (line[column] as number) + by;
  };
  for (const { animals, stretches } of classes) {
    const chance = chanceOf(stretches, upTo);
    const by = animals / (chance * chance);
    for (const rows of stretches)
      for (const columns of stretches) {
        const [top, bottom] = [placeOf[rows[0]] as number, placeOf[rows[1]] as number];
        const [first, last] = [placeOf[columns[0]] as number, placeOf[columns[1]] as number];
        add(top, first, by);
        add(top, last, -by);
        add(bottom, first, -by);
        add(bottom, last, by);
      }
  }
  for (let row = 0; row < size; row++)
    for (let column = 0; column < size; column++) {
      const above = row > 0 ? (corners[row - 1]?.[column] as number) : 0;
      const before = column > 0 ? (corners[row]?.[column - 1] as number) : 0;
      const both = row > 0 && column > 0 ? (corners[row - 1]?.[column - 1] as number) : 0;
      add(row, column, above + before - both);
    }
  return corners.slice(0, size).map((row) => row.slice(0, size));
}
