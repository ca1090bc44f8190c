import type { IntervalMethod } from "../../core/statistics/proportionInterval.ts";
import { coverageOf, coverageSizes } from "./coverage.ts";
import { markdownRows } from "./markdownRows.ts";
import { percent } from "./percent.ts";

const names = { wilson: "Wilson", exact: "exact", jeffreys: "Jeffreys" } as const satisfies Record<
  IntervalMethod,
  string
>;

/** Mean and least coverage of the interval methods. */
export const coverageTable = (): string =>
  markdownRows(
    ["method", "sheep looked at", "on average", "least", "least at a true share of", "shares covered below 93 %"],
    (Object.keys(names) as IntervalMethod[]).flatMap((method) =>
      coverageSizes.map((n) => {
        const { mean, least, leastAt, poor } = coverageOf(method, n);
        return [names[method], String(n), percent(mean, 2), percent(least, 2), percent(leastAt, 2), percent(poor, 1)];
      }),
    ),
  );
