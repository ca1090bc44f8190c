import ln from "@stdlib/math-base-special-ln";
import type { Tails } from "./tails.ts";

/**
 * Where a tail of a distribution holds the chance `p`.
 *
 * Newton's steps on the logarithm of the tail. On the scales used (logit for beta, logarithm for gamma) that
 * logarithm is concave, so every step after the first comes from the outer side and none overshoots.
 *
 * @param tails both tails at a point of the scale
 * @param tail which of the two is meant
 * @param p chance in that tail, 0 < p < 1
 * @param start a first guess on the scale
 * @returns the point on the scale
 */
export function solveTail(tails: (at: number) => Tails, tail: "lower" | "upper", p: number, start: number): number {
  const direction = tail === "lower" ? 1 : -1;
  let at = start;
  let before = Infinity;
  for (let turn = 0; turn < 200; turn++) {
    const here = tails(at);
    const found = here[tail];
    // A guess so far out that the tail vanishes carries no slope to follow: come inwards.
    if (!(found > 0 && here.slope > 0)) {
      at += found > 0 ? -direction : direction;
      continue;
    }
    const step = (ln(found / p) * found) / here.slope;
    at -= direction * step;
    const size = Math.abs(step);
    // Steps that no longer shrink are rounding.
    if (size <= 1e-16 * Math.abs(at) || (size < 1e-9 && size >= before)) return at;
    before = size;
  }
  throw new RangeError(`no quantile found for a ${tail} tail of ${p}`);
}
