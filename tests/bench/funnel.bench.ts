import stdlibCdf from "@stdlib/stats-base-dists-binomial-cdf";
import stdlibPmf from "@stdlib/stats-base-dists-binomial-pmf";
import stdlibQuantile from "@stdlib/stats-base-dists-binomial-quantile";
import { binomialDistribution } from "simple-statistics";
import { funnelFunction } from "../../functions/benchmarking/funnel.ts";
import type { Cell } from "../../src/cells/cell.ts";
import { funnelLimit } from "../../src/core/benchmarking/funnelLimit.ts";
import { evaluate } from "../../src/definition/evaluate.ts";
import { engineInNode } from "../../src/hosts/headless/engineInNode.ts";
import { type EngineWorkbook, placeKey } from "../../src/workbook/engine.ts";
import { jStat } from "./jStat.ts";
import { medianTimes } from "./medianTimes.ts";
import { referenceCases } from "./referenceValues.ts";
import type { BenchReport } from "./report.ts";
import { showErrors, showRatio, showTime } from "./show.ts";

type Limit = (p: number, n: number, target: number) => number;

const between = (p: number, n: number, count: number, upTo: number, density: number): number =>
  Math.max((count - (upTo - p) / density) / n, 0);

/** jstat has no binomial quantile: its chances are added up from 0. */
const byDensity: Limit = (p, n, target) => {
  let count = 0;
  let density = jStat.binomial.pdf(0, n, target);
  let upTo = density;
  while (upTo < p && count < n) {
    count++;
    density = jStat.binomial.pdf(count, n, target);
    upTo += density;
  }
  return between(p, n, count, upTo, density);
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
  jstat: byDensity,
  "simple-statistics": byList,
  "@stdlib": byQuantile,
} as const;

type Library = keyof typeof ways;

/** Funnel limits for flocks of 20 to 2,000, and the worksheet function with 10,000 flocks. */
export async function bench(): Promise<BenchReport> {
  const cases = referenceCases("funnel");
  const all = (way: Limit) => () => cases.map(({ given: [p, n, target] }) => way(p, n, target));
  const times = await medianTimes({
    "this project": all(ways["this project"]),
    jstat: all(ways.jstat),
    "simple-statistics": all(ways["simple-statistics"]),
    "@stdlib": all(ways["@stdlib"]),
  });
  const flocks = manyFlocks(10_000);
  const { sheet } = await medianTimes({ sheet: () => evaluate(funnelFunction, flocks) }, 2000);
  const engine = await timeInEngine(flocks);
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
      "jstat and simple-statistics have no binomial quantile; theirs is found from their chances of each count.",
      `FUNNEL with 10,000 flocks of 20 to 1,019 sheep, as a worksheet call: ${showTime(sheet)}; in the embedded spreadsheet engine, from cells to cells, engine started anew: ${showTime(engine)}.`,
    ],
  };
}

/** Flocks whose counts follow from their number, so that every run has the same work. */
const manyFlocks = (flocks: number) => {
  const numbers = Array.from({ length: flocks }, (_, flock) => flock);
  const seen = numbers.map((flock) => 20 + ((flock * 7919) % 1000));
  return [
    numbers.map((flock) => [`Flock ${flock}`]),
    seen.map((sheep, flock) => [Math.floor((sheep * ((flock * 31) % 11)) / 100)]),
    seen.map((sheep) => [sheep]),
  ];
};

/** One calculation of a sheet that holds the flocks in columns A to C and FUNNEL in E1. */
async function timeInEngine(columns: readonly (readonly (readonly Cell[])[])[]): Promise<number> {
  const cells = columns.flatMap((rows, column) => rows.map(([value = null], row) => ({ row, column, value })));
  const height = columns[0]?.length ?? 0;
  const formula = `=FOOT.FUNNEL(A1:A${height},B1:B${height},C1:C${height})`;
  const workbook: EngineWorkbook = {
    sheets: [{ name: "Flocks", cells: [...cells, { row: 0, column: 4, value: null, formula }] }],
    dateSystem: 1900,
    names: [],
  };
  const before = performance.now();
  const answers = await engineInNode().calculate(workbook);
  const time = performance.now() - before;
  const rows = answers.sheets[0]?.get(placeKey(0, 4))?.spill?.cells.length;
  if (rows !== height + 1) throw new Error(`FUNNEL filled ${rows} rows in the engine instead of ${height + 1}`);
  return time;
}
