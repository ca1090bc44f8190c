import { Problem } from "../../cells/problem.ts";
import { wholeUp } from "./wholeUp.ts";

/**
 * The lame sheep a flock holds when its share lame is the design prevalence: rounded up, at least one.
 *
 * @param flockSize sheep, whole number from 1
 * @param designPrevalence share, above 0
 * @throws Problem when the design prevalence is 0 or the flock has no sheep
 * @example
 * lameAtLeast(300, 0.05) // → 15
 */
export function lameAtLeast(flockSize: number, designPrevalence: number): number {
  if (flockSize < 1) {
    throw new Problem(`${flockSize} is no flock; enter the number of sheep it has`, { argument: "flock_size" });
  }
  if (designPrevalence <= 0) {
    throw new Problem(`${designPrevalence} lame cannot be found; enter the smallest share that matters, such as 0.02`, {
      argument: "design_prevalence",
    });
  }
  return wholeUp(flockSize * designPrevalence);
}
