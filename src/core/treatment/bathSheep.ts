import { Problem } from "../../cells/problem.ts";

/** What the product's data sheet says, and what the bath holds. */
export interface BathRun {
  readonly sheep: number;
  /** Sheep after which the bath is made up afresh, from the data sheet. */
  readonly sheepAFill: number;
  /** Minutes to stand, from the data sheet; undefined where they walk through. */
  readonly minutes: number | undefined;
  /** Sheep that stand in it together; undefined where they walk through. */
  readonly atOnce: number | undefined;
  /** Litres of one fill; undefined when they need not be added up. */
  readonly litres: number | undefined;
}

export interface BathSheep {
  readonly fills: number;
  readonly litres: number | undefined;
  /** Groups that stand in it one after the other. */
  readonly rounds: number | undefined;
  /** Minutes of standing, all rounds together, without the time for moving sheep and filling up. */
  readonly minutes: number | undefined;
}

/**
 * How many fills and how much time it takes to bathe a flock as the data sheet says. No fill serves more sheep than it
 * may; a round does not go on over a change of the bath.
 *
 * @throws Problem when the minutes are given without the sheep at once, or the other way round
 * @see common practice, no source: the numbers are the data sheet's
 * @example
 * bathSheep({ sheep: 450, sheepAFill: 200, minutes: 3, atOnce: 30, litres: 200 })
 * // → { fills: 3, litres: 600, rounds: 16, minutes: 48 }
 */
export function bathSheep({ sheep, sheepAFill, minutes, atOnce, litres }: BathRun): BathSheep {
  if ((minutes === undefined) !== (atOnce === undefined))
    throw new Problem(
      minutes === undefined
        ? "it is blank; enter the minutes that the data sheet says, or leave at_once blank too where they walk through"
        : "it is blank; enter how many stand in the bath together, or leave stand_minutes blank too where they walk through",
      { argument: minutes === undefined ? "stand_minutes" : "at_once" },
    );
  const fills = Math.ceil(sheep / sheepAFill);
  const last = sheep - (fills - 1) * sheepAFill;
  const rounds =
    atOnce === undefined ? undefined : (fills - 1) * Math.ceil(sheepAFill / atOnce) + Math.ceil(last / atOnce);
  return {
    fills,
    litres: litres === undefined ? undefined : fills * litres,
    rounds,
    minutes: rounds === undefined || minutes === undefined ? undefined : rounds * minutes,
  };
}
