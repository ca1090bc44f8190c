import exp from "@stdlib/math-base-special-exp";
import ln from "@stdlib/math-base-special-ln";
import log1p from "@stdlib/math-base-special-log1p";
import type { FlockTallies } from "./flockTallies.ts";
import { risingSums } from "./risingSums.ts";

export interface LikeliestShare {
  /** 0 to 1. */
  readonly share: number;
  readonly logLikelihood: number;
  /** How the logarithm of the likelihood bends there, by the logit of the share: below 0. */
  readonly curve: number;
}

/**
 * The likeliest mean share of flocks for a given spread between them, and the logarithm of its likelihood.
 *
 * The logarithm is concave in the share, so there is one top; Newton's steps on the logit, held between the shares
 * known to lie on either side of it.
 *
 * @param tally of flocks with neither none nor all lame in all of them, unless `more` says otherwise
 * @param spread 1 / (a + b), 0 or more
 * @param more lame and sound sheep added to what was counted: 1 and 1 for the density of the logit under a flat prior
 * @example
 * likeliestShare(
 *   { lame: [{ from: 0, to: 1, flocks: 1 }], sound: [{ from: 0, to: 3, flocks: 1 }], seen: [{ from: 0, to: 4, flocks: 1 }] },
 *   0,
 * ).share.toFixed(12) // → "0.250000000000"
 */
export function likeliestShare(
  tally: FlockTallies,
  spread: number,
  more: readonly [number, number] = [0, 0],
): LikeliestShare {
  let [below, above] = [-700, 700];
  const ofAll = risingSums(tally.seen, 1, spread).logs;
  let logit = startAt(tally, more);
  for (let turn = 0; ; turn++) {
    const { slope, curve, logLikelihood, share } = likelihoodAt(tally, logit, spread, more, ofAll);
    const step = slope / Math.abs(curve);
    if (Math.abs(step) < 1e-9 || turn === 200) return { share, logLikelihood, curve };
    if (slope > 0) below = logit;
    else above = logit;
    const next = logit + step;
    logit = curve < 0 && next > below && next < above ? next : (below + above) / 2;
  }
}

function startAt({ lame, seen }: FlockTallies, [moreLame, moreSound]: readonly [number, number]): number {
  const [ill, all] = [lame, seen].map((runs) =>
    runs.reduce((sum, { from, to, flocks }) => sum + (to - from) * flocks, 0),
  );
  return ln((ill ?? 0) + moreLame) - ln((all ?? 0) - (ill ?? 0) + moreSound);
}

/**
 * The logarithm of the likelihood at a share, with its first two derivatives by the logit of the share.
 *
 * @param ofAll the sum of logarithms over the sheep seen, which is the same for every share
 */
export function likelihoodAt(
  tally: FlockTallies,
  logit: number,
  spread: number,
  [lame, sound]: readonly [number, number],
  ofAll: number,
) {
  const rest = 1 / (1 + exp(logit));
  const share = 1 / (1 + exp(-logit));
  const ill = risingSums(tally.lame, share, spread);
  const well = risingSums(tally.sound, rest, spread);
  const width = share * rest;
  const byShare = ill.inverses - well.inverses;
  const logShare = logit < 0 ? logit - log1p(exp(logit)) : -log1p(exp(-logit));
  return {
    share,
    logLikelihood: ill.logs + well.logs - ofAll + lame * logShare + sound * (logShare - logit),
    slope: byShare * width + lame * rest - sound * share,
    curve: byShare * width * (rest - share) - (ill.squares + well.squares) * width * width - (lame + sound) * width,
  };
}
