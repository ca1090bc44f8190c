import { Problem } from "../../cells/problem.ts";

/**
 * Refuses a look that finds nothing.
 *
 * @param sensitivity share of the lame sheep that a look finds
 * @throws Problem when it is 0
 */
export function refuseBlindLook(sensitivity: number): void {
  if (sensitivity <= 0) {
    throw new Problem(`${sensitivity} finds no lame sheep at all; enter the share of lame sheep that a look finds`, {
      argument: "sensitivity",
    });
  }
}
