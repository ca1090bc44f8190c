import stdlibPmf from "@stdlib/stats-base-dists-hypergeometric-pmf";
import { sampleToFindFunction } from "../../functions/planning/sampleToFind.ts";
import { lameAtLeast } from "../../src/core/planning/lameAtLeast.ts";
import { sampleToCompare } from "../../src/core/planning/sampleToCompare.ts";
import { sampleToFind } from "../../src/core/planning/sampleToFind.ts";
import { hypergeometricDensity } from "../../src/core/statistics/hypergeometricDensity.ts";
import { evaluate } from "../../src/definition/evaluate.ts";
import { inTurns } from "./inTurns.ts";
import { jStat } from "./jStat.ts";
import { referenceCases } from "./referenceValues.ts";
import type { BenchReport } from "./report.ts";
import { showErrors, showRatio, showTime } from "./show.ts";

/** Chance of no lame sheep among n drawn of N of which M are lame. */
type NoneFound = (N: number, M: number, n: number) => number;

const noneFound = {
  "this project": (N, M, n) => hypergeometricDensity(0, { N, M, n }),
  jstat: (N, M, n) => jStat.hypgeom.pdf(0, N, M, n),
  "@stdlib": (N, M, n) => stdlibPmf(0, N, M, n),
} as const satisfies Record<string, NoneFound>;

type Library = keyof typeof noneFound;

/** The smallest number with the libraries' own chances, by the same halving as ours. */
const byHalving = (none: NoneFound) => (N: number, designPrevalence: number, confidence: number) => {
  const M = lameAtLeast(N, designPrevalence);
  let [few, enough] = [0, N - M + 1];
  while (enough - few > 1) {
    const n = Math.floor((few + enough) / 2);
    if (1 - none(N, M, n) >= confidence - 1e-9) enough = n;
    else few = n;
  }
  return enough;
};

const sizes: Readonly<Record<Library, (N: number, p: number, c: number) => number | undefined>> = {
  "this project": (flockSize, designPrevalence, confidence) =>
    sampleToFind({ flockSize, designPrevalence, confidence, sensitivity: 1 }).sheep,
  jstat: byHalving(noneFound.jstat),
  "@stdlib": byHalving(noneFound["@stdlib"]),
};

/** Smallest numbers of sheep to look at to find one lame, for flocks up to 100,000; and the time for a flock of a million. */
export function bench(): BenchReport {
  const cases = referenceCases("sample");
  const all = (way: (typeof sizes)[Library]) => () => cases.map(({ given: [N, p, c] }) => way(N, p, c));
  const times = inTurns({
    "this project": all(sizes["this project"]),
    jstat: all(sizes.jstat),
    "@stdlib": all(sizes["@stdlib"]),
  });
  const million = inTurns({
    core: () => sizes["this project"](1_000_000, 0.02, 0.95),
    worksheet: () => evaluate(sampleToFindFunction, [1_000_000, 0.02]),
  });
  const compare = inTurns({
    usual: () => sampleToCompare({ before: 0.1, after: 0.02, power: 0.8, confidence: 0.95 }),
    // The guess lies far above the answer, so that the search is long.
    slow: () => sampleToCompare({ before: 0.73, after: 0.723, power: 0.5, confidence: 0.5 }),
  });
  return {
    title: "How many sheep to look at to find one lame",
    rows: (Object.keys(noneFound) as Library[]).map((name) => {
      const right = cases.filter(({ given: [N, p, c], value: [n] }) => sizes[name](N, p, c) === n).length;
      const chances = cases.map(({ given: [N, p], value: [n] }) => noneFound[name](N, lameAtLeast(N, p), n));
      return {
        library: name,
        "one number": showTime(times[name] / cases.length),
        "time, ours = 1": showRatio(times[name], times["this project"]),
        "numbers right": `${right} of ${cases.length}`,
        "error of the chance": showErrors(
          chances,
          cases.map(({ value }) => value[1]),
        ),
      };
    }),
    notes: [
      "Every library halves in the same way and differs only in the chance of finding none. References are fractions of whole numbers, without rounding.",
      `SAMPLETOFIND for a flock of 1,000,000 with 2 % lame: ${showTime(million.core)} for the computation, ${showTime(million.worksheet)} as a worksheet call.`,
      `SAMPLETOCOMPARE: ${showTime(compare.usual)} from 10 % to 2 %; ${showTime(compare.slow)} from 73 % to 72.3 % with power and confidence 0.5, near the slowest of 3,000 random calls tried.`,
      "simple-statistics has no hypergeometric distribution.",
    ],
    limits: [
      {
        what: "time, the quickest other = 1,",
        measured: times["this project"] / Math.min(times.jstat, times["@stdlib"]),
        most: 2,
      },
    ],
  };
}
