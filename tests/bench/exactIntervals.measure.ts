import stdlibQuantile from "@stdlib/stats-base-dists-beta-quantile";
import { exactInterval } from "../../src/core/statistics/exactInterval.ts";
import type { Interval } from "../../src/core/statistics/interval.ts";
import { inTurns } from "./inTurns.ts";
import { jStat } from "./jStat.ts";
import { type ReferenceCase, referenceCases } from "./referenceValues.ts";
import type { BenchReport } from "./report.ts";
import { showErrors, showRatio, showTime } from "./show.ts";

type Quantile = (p: number, a: number, b: number) => number;

const byQuantile =
  (quantile: Quantile) =>
  (x: number, n: number, confidence: number): Interval => ({
    low: quantile((1 - confidence) / 2, x, n - x + 1),
    high: quantile((1 + confidence) / 2, x + 1, n - x),
  });

const ways = {
  "this project": exactInterval,
  jstat: byQuantile((p, a, b) => jStat.beta.inv(p, a, b)),
  "@stdlib": byQuantile(stdlibQuantile),
} as const;

/** Exact (Clopper–Pearson) intervals for flocks from 20 to 100,000 sheep, at 95 % and 99.99 %. */
export function bench(): BenchReport {
  const cases = referenceCases("exact");
  const all = (way: (typeof ways)[keyof typeof ways]) => () => cases.map(({ given: [x, n, c] }) => way(x, n, c));
  const times = inTurns({
    "this project": all(ways["this project"]),
    jstat: all(ways.jstat),
    "@stdlib": all(ways["@stdlib"]),
  });
  return {
    title: "Exact intervals for a share",
    rows: (Object.keys(ways) as (keyof typeof ways)[]).map((name) => ({
      library: name,
      "one interval": showTime(times[name] / cases.length),
      "time, ours = 1": showRatio(times[name], times["this project"]),
      ...errors(ways[name], cases),
    })),
    notes: [
      `${cases.length} intervals: 20 to 100,000 sheep looked at, from one lame to all but one, at 95 % and 99.99 %. Errors are the largest relative ones against 40-digit arithmetic; what ours and @stdlib share is the rounding of 1 − 0.9999, before any of them begins.`,
      "simple-statistics has no quantile of the beta distribution and so no exact interval.",
    ],
    limits: [{ what: "microseconds an interval", measured: (1000 * times["this project"]) / cases.length, most: 30 }],
  };
}

function errors(way: (x: number, n: number, c: number) => Interval, cases: readonly ReferenceCase[]) {
  const found = cases.map(({ given: [x, n, c] }) => way(x, n, c));
  return {
    "error, low": showErrors(
      found.map(({ low }) => low),
      cases.map(({ value }) => value[0]),
    ),
    "error, high": showErrors(
      found.map(({ high }) => high),
      cases.map(({ value }) => value[1]),
    ),
  };
}
