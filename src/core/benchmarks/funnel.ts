import { checkCounts } from "../prevalence/checkCounts.ts";
import { tallyByName } from "../prevalence/tallyByName.ts";
import { funnelLimit } from "./funnelLimit.ts";
import { shareOfFlocks } from "./shareOfFlocks.ts";

/** The limits for one size of flock. */
interface FunnelLimits {
  readonly low95: number;
  readonly high95: number;
  readonly low998: number;
  readonly high998: number;
}

/** One flock in the funnel; share and limits are undefined where no sheep were seen. */
export interface FunnelFlock extends Partial<Readonly<Record<keyof FunnelLimits, number | undefined>>> {
  readonly flock: string;
  readonly seen: number;
  readonly share: number | undefined;
  readonly word: string;
}

/**
 * Flocks side by side: each with the limits within which a flock of its size falls by chance.
 *
 * @param flocks name of the flock a row; rows of one flock are added up
 * @param lame lame sheep a row
 * @param seen sheep seen a row
 * @param target the share expected; left out, that of all flocks together
 * @returns flocks in order of first appearance
 * @throws Problem when a row has more lame than seen, or one flock is to be compared with itself; #N/A when no sheep were seen
 * @source Spiegelhalter 2005, Stat Med 24:1185
 * @example
 * funnel(["A", "B"], [2, 30], [100, 100], 0.05).map(({ word }) => word)
 * // → ["within the limits", "above the 99.8 % limit"]
 */
export function funnel(
  flocks: readonly string[],
  lame: readonly number[],
  seen: readonly number[],
  target?: number,
): readonly FunnelFlock[] {
  checkCounts(lame, seen);
  const tally = tallyByName({ argument: "flocks", names: flocks }, lame, seen);
  const expected = target ?? shareOfFlocks(tally, "give two flocks or more, or a target");
  const limitsOf = limitsBySize(expected);
  return tally.map(({ name, lame: x, seen: n }) => {
    if (n === 0) return { flock: name, seen: n, share: undefined, word: "no sheep seen" };
    const limits = limitsOf(n);
    return { flock: name, seen: n, share: x / n, ...limits, word: wordFor(x / n, limits) };
  });
}

// Many flocks have the same size.
function limitsBySize(target: number): (n: number) => FunnelLimits {
  const known = new Map<number, FunnelLimits>();
  return (n) => {
    const limits = known.get(n) ?? {
      low95: funnelLimit(0.025, n, target),
      high95: funnelLimit(0.975, n, target),
      low998: funnelLimit(0.001, n, target),
      high998: funnelLimit(0.999, n, target),
    };
    known.set(n, limits);
    return limits;
  };
}

function wordFor(share: number, { low95, high95, low998, high998 }: FunnelLimits): string {
  if (share > high998) return "above the 99.8 % limit";
  if (share > high95) return "above the 95 % limit";
  if (share < low998) return "below the 99.8 % limit";
  if (share < low95) return "below the 95 % limit";
  return "within the limits";
}
