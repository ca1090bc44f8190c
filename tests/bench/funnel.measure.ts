import stdlibCdf from "@stdlib/stats-base-dists-binomial-cdf";
import stdlibPmf from "@stdlib/stats-base-dists-binomial-pmf";
import stdlibQuantile from "@stdlib/stats-base-dists-binomial-quantile";
import { binomialDistribution } from "simple-statistics";
import { funnelLimit } from "../../src/core/benchmarking/funnelLimit.ts";
import { inTurns } from "./inTurns.ts";
import { jStat } from "./jStat.ts";
import { referenceCases } from "./referenceValues.ts";
import type { BenchReport } from "./report.ts";
import { showErrors, showRatio, showTime } from "./show.ts";

type Limit = (p: number, n: number, target: number) => number;

const between = (p: number, n: number, count: number, upTo: number, density: number): number =>
  Math.max((count - (upTo - p) / density) / n, 0);

/** jstat has no binomial quantile; the smallest count is halved for with its distribution function. */
const byHalving: Limit = (p, n, target) => {
  let [below, enough] = [-1, n];
  while (enough - below > 1) {
    const middle = (below + enough) >> 1;
    if (jStat.binomial.cdf(middle, n, target) >= p) enough = middle;
    else below = middle;
  }
  return between(p, n, enough, jStat.binomial.cdf(enough, n, target), jStat.binomial.pdf(enough, n, target));
};

/** simple-statistics gives the whole distribution as a list, up to where it thinks that it ends. */
const byList: Limit = (p, n, target) => {
  const chances = binomialDistribution(n, target) ?? [];
  let upTo = 0;
  const count = chances.findIndex((chance) => {
    upTo += chance;
    return upTo >= p;
  });
  return between(p, n, count, upTo, chances[count] ?? Number.NaN);
};

const byQuantile: Limit = (p, n, target) => {
  const count = stdlibQuantile(p, n, target);
  return between(p, n, count, stdlibCdf(count, n, target), stdlibPmf(count, n, target));
};

const ways = {
  "this project": funnelLimit,
  jstat: byHalving,
  "simple-statistics": byList,
  "@stdlib": byQuantile,
} as const;

type Library = keyof typeof ways;

/** Funnel limits for flocks of 20 to 2,000. */
export function bench(): BenchReport {
  const cases = referenceCases("funnel");
  const all = (way: Limit) => () => cases.map(({ given: [p, n, target] }) => way(p, n, target));
  const times = inTurns({
    "this project": all(ways["this project"]),
    jstat: all(ways.jstat),
    "simple-statistics": all(ways["simple-statistics"]),
    "@stdlib": all(ways["@stdlib"]),
  });
  const others = Math.min(times.jstat, times["simple-statistics"], times["@stdlib"]);
  return {
    title: "Funnel limits",
    rows: (Object.keys(ways) as Library[]).map((name) => {
      const limits = all(ways[name])();
      return {
        library: name,
        "one limit": showTime(times[name] / cases.length),
        "time, ours = 1": showRatio(times[name], times["this project"]),
        error: showErrors(
          limits,
          cases.map(({ value }) => value[0]),
        ),
      };
    }),
    notes: [
      `${cases.length} limits: 20 to 2,000 sheep, 2, 5 and 10 % expected, 95 % and 99.8 % limits. Errors are the largest relative ones against sums in 40 digits; where the limit is 0, only 0 is right.`,
      "Neither jstat nor simple-statistics has a binomial quantile. With jstat the count is halved for with its distribution function; simple-statistics gives the chances of all counts as one list, which is added up. @stdlib has the quantile itself.",
    ],
    limits: [{ what: "time, the quickest other = 1,", measured: times["this project"] / others, most: 1 }],
  };
}
