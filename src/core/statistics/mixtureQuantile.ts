import exp from "@stdlib/math-base-special-exp";
import ln from "@stdlib/math-base-special-ln";
import { betaTails } from "./betaTails.ts";
import type { PossibleSpread } from "./spreadPosterior.ts";

/**
 * The share beyond which a tail of a mixture of beta distributions holds the chance `p`.
 *
 * Newton's steps on the logarithm of the tail over the logit, halved where one would leave the places known to lie on
 * either side.
 *
 * @param parts beta distributions with their weights, which sum to 1
 * @param start a first guess of the share
 * @returns relative accuracy about 1e-12: the last step is of the order of 1e-9, and its error of the square of it
 * @example
 * mixtureQuantile("lower", 0.25, [{ a: 1, b: 1, weight: 1 }], 0.5) // → 0.25
 */
export function mixtureQuantile(
  tail: "lower" | "upper",
  p: number,
  parts: readonly PossibleSpread[],
  start: number,
): number {
  const direction = tail === "lower" ? 1 : -1;
  let [below, above] = [-690, 690];
  let at = Math.min(Math.max(ln(start) - ln(1 - start), below), above);
  for (let turn = 0; turn < 100; turn++) {
    let [found, slope] = [0, 0];
    const [x, y] = [shareOf(at), shareOf(-at)];
    for (const { a, b, weight } of parts) {
      const tails = betaTails(x, a, b, y);
      found += weight * tails[tail];
      slope += weight * tails.slope;
    }
    const excess = direction * (found - p);
    if (excess > 0) above = at;
    else below = at;
    const step = (-direction * ln(found / p) * found) / slope;
    const next = at + step;
    if (Math.abs(step) < 1e-6) return shareOf(next);
    at = next > below && next < above ? next : (below + above) / 2;
    if (above - below < 1e-13 * Math.max(Math.abs(at), 1)) return shareOf(at);
  }
  return shareOf(at);
}

const shareOf = (logit: number): number => (logit < 0 ? exp(logit) / (1 + exp(logit)) : 1 / (1 + exp(-logit)));
