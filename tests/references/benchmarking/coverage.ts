// How often ranges and words of the benchmarking functions hold, by seeded simulation. Run by hand:
// npx tsx tests/references/benchmarking/coverage.ts [times] (a quarter of an hour), then npm run generate. "times" runs so
// many times as many flocks, for figures that are surer.
import { writeFileSync } from "node:fs";
import { correlationRange } from "../../../src/core/statistics/correlationRange.ts";
import { funnel } from "../../../src/core/benchmarking/funnel.ts";
import { shrunkPrevalence } from "../../../src/core/benchmarking/shrunkPrevalence.ts";
import { weightedShare } from "../../../src/core/counting/weightedShare.ts";
import { normalScore } from "../../../src/core/statistics/normalScore.ts";
import { drawsFrom } from "../gathers/draws.ts";

const times = Number(process.argv[2] ?? 1);

const { share: random, binomial: lameAmong, shareOf } = drawsFrom(18);

/** 20 to 300 sheep looked at, small flocks more often than large ones. */
const someSheep = (): number => 20 + Math.floor(random() * random() * 281);

function flocksOf(count: number, mean: number, correlation: number) {
  return Array.from({ length: count }, () => {
    const share = shareOf(mean, correlation);
    const seen = someSheep();
    return { share, seen, lame: lameAmong(seen, share) };
  });
}

type Flocks = ReturnType<typeof flocksOf>;
const columns = (flocks: Flocks) =>
  [flocks.map((_, index) => `flock ${index}`), flocks.map(({ lame }) => lame), flocks.map(({ seen }) => seen)] as const;

const rounded = (part: number, all: number): number => Math.round((10_000 * part) / all) / 10_000;

const shrunk = [];
for (const flocks of [5, 10, 20, 40])
  for (const correlation of [0, 0.02, 0.05])
    for (const mean of [0.05]) {
      let [held, ranked, all] = [0, 0, 0];
      for (let turn = 0; turn < (8000 * times) / flocks; turn++) {
        const set = flocksOf(flocks, mean, correlation);
        const order = [...set].sort((one, other) => one.share - other.share);
        shrunkPrevalence(...columns(set), 0.95).forEach(({ low, high, lowRank, highRank }, index) => {
          const share = set[index]?.share ?? Number.NaN;
          const rank = order.indexOf(set[index] as Flocks[number]) + 1;
          all++;
          if (low <= share && share <= high) held++;
          if (lowRank <= rank && rank <= highRank) ranked++;
        });
      }
      // Flocks that are all alike have no ranks.
      shrunk.push({ flocks, correlation, mean, held: rounded(held, all), ranked: correlation === 0 ? null : rounded(ranked, all) });
    }

const likeness = [];
for (const flocks of [5, 10, 20, 40])
  for (const correlation of [0, 0.02, 0.05, 0.2]) {
    let [held, all] = [0, 0];
    for (let turn = 0; turn < 400 * times; turn++) {
      const set = flocksOf(flocks, 0.05, correlation);
      if (set.every(({ lame }) => lame === 0)) continue;
      const { low, high } = correlationRange(set, 0.95);
      all++;
      if (low <= correlation && correlation <= high) held++;
    }
    likeness.push({ flocks, correlation, held: rounded(held, all) });
  }

const widened = [];
for (const flocks of [10, 20, 40])
  for (const correlation of [0, 0.02, 0.05, 0.1]) {
    let [beyond95, beyond998, usual95, all, found, turns] = [0, 0, 0, 0, 0, 0];
    const outside = (word: string | undefined): boolean => word !== undefined && word !== "within the limits";
    for (let turn = 0; turn < (6000 * times) / flocks; turn++) {
      const set = flocksOf(flocks, 0.05, correlation);
      const words = funnel(...columns(set), undefined, true).map(({ word }) => word);
      all += flocks;
      beyond95 += words.filter(outside).length;
      beyond998 += words.filter((word) => word.includes("99.8")).length;
      usual95 += funnel(...columns(set)).filter(({ word }) => outside(word)).length;
      // The first flock in truth five times as lame as the others.
      const one = { share: 0.25, seen: 150, lame: lameAmong(150, 0.25) };
      turns++;
      if (outside(funnel(...columns([one, ...set.slice(1)]), undefined, true)[0]?.word)) found++;
    }
    widened.push({
      flocks,
      correlation,
      usual95: rounded(usual95, all),
      beyond95: rounded(beyond95, all),
      beyond998: rounded(beyond998, all),
      found: rounded(found, turns),
    });
  }

/** So many lame among n drawn without putting back. */
const drawn = (size: number, lame: number, n: number): number => {
  let found = 0;
  for (let sheep = 0; sheep < n; sheep++) if (random() < (lame - found) / (size - sheep)) found++;
  return found;
};

const weighted = [];
for (const groups of [3, 10, 20, 40])
  for (const [size, looked] of [
    [10, 3],
    [15, 2],
    [20, 5],
    [40, 10],
  ] as const)
    for (const share of [0.05, 0.15]) {
      const sizes = Array.from({ length: groups }, (_, group) => size + 2 * (group % 5));
      // Every fourth group holds all the lame sheep, or all groups hold them alike.
      const held = [0, 0];
      const turns = 1500 * times;
      [
        sizes.map((n, group) => Math.floor(n * share) + (group % 2)),
        sizes.map((n, group) => (group % 4 === 0 ? Math.min(n, Math.round(4 * n * share)) : 0)),
      ].forEach((lame, kind) => {
        const flock = sizes.reduce((sum, n) => sum + n, 0);
        const truth = lame.reduce((sum, count) => sum + count, 0) / flock;
        for (let turn = 0; turn < turns; turn++) {
          // The range of WEIGHTEDPREV, which refuses the smallest of these: what it would be is to be seen.
          const parts = sizes.map((n, group) => ({
            weight: n / flock,
            lame: drawn(n, lame[group] ?? 0, looked),
            seen: looked,
            left: (n - looked) / (n - 1),
          }));
          const { low, high } = weightedShare(parts, normalScore(0.95));
          if (low <= truth + 1e-12 && truth - 1e-12 <= high) held[kind] = (held[kind] ?? 0) + 1;
        }
      });
      weighted.push({ groups, size, looked, share, alike: rounded(held[0] ?? 0, turns), uneven: rounded(held[1] ?? 0, turns) });
    }

writeFileSync(
  new URL("../../../src/build/methods/benchmarkCoverage.json", import.meta.url),
  `${JSON.stringify({ shrunk, likeness, widened, weighted }, undefined, 1)}\n`,
);
