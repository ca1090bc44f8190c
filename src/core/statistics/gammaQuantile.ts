import exp from "@stdlib/math-base-special-exp";
import ln from "@stdlib/math-base-special-ln";
import pow from "@stdlib/math-base-special-pow";
import { gammaTails } from "./gammaTails.ts";
import { roughNormalScore } from "./roughNormalScore.ts";
import { solveTail } from "./solveTail.ts";

/**
 * The value beyond which a tail of the gamma distribution (scale 1) holds the chance `p`;
 * twice the value is the chi-square quantile with 2a degrees of freedom.
 *
 * Own code: `@stdlib/stats-base-dists-gamma-quantile` costs 37 kB (gzip). Relative accuracy about 1e-13.
 *
 * @param tail "lower": chance `p` of less; "upper": chance `p` of more
 * @param p 0 < p < 1
 * @param a shape, above 0
 * @example
 * gammaQuantile("upper", Math.exp(-2), 1) // → 2
 */
export function gammaQuantile(tail: "lower" | "upper", p: number, a: number): number {
  const score = (tail === "lower" ? -1 : 1) * roughNormalScore(p);
  // Wilson & Hilferty's cube root; where it fails (small shapes), the first term of the series.
  const root = 1 - 1 / (9 * a) + score / (3 * Math.sqrt(a));
  const start = root > 0.1 ? ln(a * pow(root, 3)) : ln(a) - 1 / a;
  return exp(solveTail((u) => gammaTails(exp(u), a), tail, p, start));
}
