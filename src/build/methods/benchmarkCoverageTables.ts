import { readFileSync } from "node:fs";
import { markdownRows } from "./markdownRows.ts";
import { percent } from "./percent.ts";

interface Simulated {
  readonly shrunk: readonly {
    readonly flocks: number;
    readonly correlation: number;
    readonly mean: number;
    readonly held: number;
    readonly ranked: number | null;
  }[];
  readonly likeness: readonly { readonly flocks: number; readonly correlation: number; readonly held: number }[];
  readonly widened: readonly {
    readonly flocks: number;
    readonly correlation: number;
    readonly usual95: number;
    readonly beyond95: number;
    readonly beyond998: number;
    readonly found: number;
  }[];
  readonly weighted: readonly {
    readonly groups: number;
    readonly size: number;
    readonly looked: number;
    readonly share: number;
    readonly alike: number;
    readonly uneven: number;
  }[];
}

/** What tests/references/benchmarking/coverage.ts found; read when a page is made, as it takes minutes to simulate. */
const simulated = (): Simulated => JSON.parse(readFileSync(new URL("benchmarkCoverage.json", import.meta.url), "utf8"));

/** How often SHRUNKPREV's ranges hold the true share and the true rank. */
export const shrunkCoverageTable = (): string =>
  markdownRows(
    ["flocks", "intra-flock correlation", "mean share lame", "range holds the true share", "ranks hold the true rank"],
    simulated().shrunk.map(({ flocks, correlation, mean, held, ranked }) => [
      String(flocks),
      String(correlation),
      percent(mean),
      percent(held, 1),
      ranked === null ? "no ranks" : percent(ranked, 1),
    ]),
  );

/** How often FLOCKSPREAD's range holds the true correlation. */
export const likenessCoverageTable = (): string =>
  markdownRows(
    ["flocks", "intra-flock correlation", "range holds it"],
    simulated().likeness.map(({ flocks, correlation, held }) => [
      String(flocks),
      String(correlation),
      percent(held, 1),
    ]),
  );

/** How many flocks FUNNEL calls outside when its limits allow for flocks that differ. */
export const widenedFunnelTable = (): string =>
  markdownRows(
    [
      "flocks",
      "intra-flock correlation",
      "usual: outside 95 %",
      "flocks_differ: outside 95 %",
      "flocks_differ: outside 99.8 %",
      "one at 25 % among them is found",
    ],
    simulated().widened.map(({ flocks, correlation, usual95, beyond95, beyond998, found }) => [
      String(flocks),
      String(correlation),
      percent(usual95, 1),
      percent(beyond95, 1),
      percent(beyond998, 2),
      percent(found),
    ]),
  );

/** How often WEIGHTEDPREV's range holds the truth with few and with many groups. */
export const manyGroupsTable = (): string =>
  markdownRows(
    ["groups", "sheep a group", "looked at of each", "share lame", "alike in all groups", "all in every fourth group"],
    simulated().weighted.map(({ groups, size, looked, share, alike, uneven }) => [
      String(groups),
      `${size} to ${size + 8}`,
      String(looked),
      percent(share),
      percent(alike, 1),
      percent(uneven, 1),
    ]),
  );
