import Big from "big.js";
import { Problem } from "../../cells/problem.ts";

/**
 * The distance between two marks of a syringe, in ml, as an exact decimal.
 *
 * @throws Problem when it is no mark that a syringe has: outside 0.01 to 10 ml, or finer than a hundredth
 * @example
 * syringeMark(0.1).times(3).toNumber() // → 0.3 (in binary 3 × 0.1 gives 0.30000000000000004)
 */
export function syringeMark(markMl: number): Big {
  const mark = new Big(markMl);
  if (mark.lt(0.01) || mark.gt(10) || !mark.round(2).eq(mark))
    throw new Problem(`${markMl} ml is not the mark of a syringe; enter 0.01 to 10 ml, such as 0.1, 0.2, 0.25 or 0.5`, {
      argument: "mark_ml",
    });
  return mark;
}
