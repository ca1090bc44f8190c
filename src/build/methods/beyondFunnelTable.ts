import { beyondFunnel } from "./beyondFunnel.ts";
import { markdownRows } from "./markdownRows.ts";
import { percent } from "./percent.ts";

const target = 0.05;

/** How many flocks fall outside the funnel when flocks differ beyond chance. */
export const beyondFunnelTable = (): string =>
  markdownRows(
    ["sheep looked at", "intra-flock correlation", "outside the 95 % limits", "outside the 99.8 % limits"],
    [50, 100, 200, 500].flatMap((n) =>
      [0, 0.01, 0.05].map((correlation) => [
        String(n),
        String(correlation),
        percent(beyondFunnel(n, target, correlation, 0.025), 1),
        percent(beyondFunnel(n, target, correlation, 0.001), 1),
      ]),
    ),
  );
