import { Problem } from "../../cells/problem.ts";
import { type ShrunkFlock, shrunkPrevalence } from "../../core/benchmarking/shrunkPrevalence.ts";
import { nameKey } from "../../core/words/nameKey.ts";
import type { ComparisonContent } from "./comparisonContent.ts";

/** Which flocks count and how they rank, worked out once when a comparison is collated. */
export interface SettledFigures {
  /** For each row of Flocks its place among those that count, from 1; undefined where it does not. */
  readonly places: readonly (number | undefined)[];
  /** For each flock that counts its turn in the order of ranks, from 1; none where nothing can be ranked. */
  readonly turns: readonly number[];
  /** The flocks that count, in the order of their places; none where nothing can be ranked. */
  readonly inOrder: readonly ShrunkFlock[];
  /** The same in the order of their turns. */
  readonly inTurn: readonly ShrunkFlock[];
}

/** Which flocks count, and their order. */
export function settledFigures({ flocks }: ComparisonContent): SettledFigures {
  const met = new Map<string, number>();
  for (const { flock } of flocks) met.set(nameKey(flock), (met.get(nameKey(flock)) ?? 0) + 1);
  const counted: { readonly flock: string; readonly lame: number; readonly seen: number }[] = [];
  const places = flocks.map(({ flock, lookedAt: seen, lame }) => {
    const isWhole = (count: number | undefined): count is number => Number.isInteger(count);
    if (!isWhole(seen) || !isWhole(lame) || seen <= 0 || lame < 0 || lame > seen) return undefined;
    if (nameKey(flock) === "" || met.get(nameKey(flock)) !== 1) return undefined;
    return counted.push({ flock, lame, seen });
  });
  const steadied = steadiedOf(counted);
  const order = steadied.map((_, index) => index);
  order.sort((one, other) => (steadied[one]?.rank ?? 0) - (steadied[other]?.rank ?? 0) || one - other);
  const turns: number[] = [];
  order.forEach((index, turn) => {
    turns[index] = turn + 1;
  });
  return { places, turns, inOrder: steadied, inTurn: order.flatMap((index) => steadied[index] ?? []) };
}

function steadiedOf(
  counted: readonly { readonly flock: string; readonly lame: number; readonly seen: number }[],
): readonly ShrunkFlock[] {
  try {
    return shrunkPrevalence(
      counted.map(({ flock }) => flock),
      counted.map(({ lame }) => lame),
      counted.map(({ seen }) => seen),
      0.95,
    );
  } catch (error) {
    // The list beside it says why.
    if (error instanceof Problem) return [];
    throw error;
  }
}
