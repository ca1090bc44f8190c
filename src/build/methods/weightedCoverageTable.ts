import { weightedPrevalence } from "../../core/counting/weightedPrevalence.ts";
import { hypergeometricDensity } from "../../core/statistics/hypergeometricDensity.ts";
import { normalScore } from "../../core/statistics/normalScore.ts";
import { nominal } from "./coverage.ts";
import { markdownRows } from "./markdownRows.ts";
import { percent } from "./percent.ts";

const sizes = [120, 60, 220];
const looked = [20, 15, 25];
const flocks = [
  [0, 0, 2],
  [2, 1, 4],
  [6, 3, 11],
  [40, 6, 20],
  [2, 30, 0],
] as const;

/** How often WEIGHTEDPREV's range holds the truth, beside the usual "share ± z standard errors", over every outcome. */
export const weightedCoverageTable = (): string =>
  markdownRows(
    ["lame in groups of 120, 60 and 220", "WEIGHTEDPREV", "share ± z standard errors"],
    flocks.map((lame) => {
      const { ours, usual } = coverageOf(lame);
      return [lame.join(", "), percent(ours, 1), percent(usual, 1)];
    }),
  );

function coverageOf(lame: readonly number[]) {
  const truth = lame.reduce((sum, count) => sum + count, 0) / sizes.reduce((sum, size) => sum + size, 0);
  const z = normalScore(nominal);
  let [ours, usual] = [0, 0];
  for (const { counts, chance } of outcomes(lame)) {
    // What is left out adds up to less than the last digit printed.
    if (chance < 1e-8) continue;
    const { share, low, high, standardError = Number.NaN } = weightedPrevalence(sizes, counts, looked, nominal);
    if (low <= truth && truth <= high) ours += chance;
    if (Math.abs(truth - share) <= z * standardError) usual += chance;
  }
  return { ours, usual };
}

interface Outcome {
  readonly counts: readonly number[];
  readonly chance: number;
}

/** Every set of lame sheep that may be found in the groups, with its chance. */
const outcomes = (lame: readonly number[]): readonly Outcome[] =>
  looked.reduce<readonly Outcome[]>(
    (sofar, n, group) =>
      sofar.flatMap(({ counts, chance }) =>
        Array.from({ length: n + 1 }, (_, x) => ({
          counts: [...counts, x],
          chance: chance * hypergeometricDensity(x, { N: sizes[group] ?? 0, M: lame[group] ?? 0, n }),
        })),
      ),
    [{ counts: [], chance: 1 }],
  );
