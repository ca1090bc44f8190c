import * as z from "zod/mini";
import { numberIn } from "../cells/numberIn.ts";
import { wantedDays } from "../core/records/faults.ts";
import { type CellKind, defineKind, refuse } from "./kind.ts";

// The pages forbid eval, and zod probes for it unless told not to.
z.config({ jitless: true });

const numberKind = (wanted: string, schema: z.ZodMiniType<number, number>): CellKind<number> =>
  defineKind({
    wanted,
    holds: "number",
    remember: true,
    read(cell) {
      const value = numberIn(cell);
      if (value === undefined) throw refuse(cell, "is not a number", wanted);
      const checked = schema.safeParse(value);
      if (!checked.success) throw refuse(cell, checked.error.issues[0]?.message ?? "does not fit", wanted);
      return checked.data;
    },
  });

const atLeast = (least: number) => z.gte(least, `is below ${least}`);
const atMost = (most: number) => z.lte(most, `is above ${most}`);
// Far beyond any flock, so that no sum, power or table of a computation runs out of numbers or of memory.
const notTooLarge = (most: number) => z.lte(most, "is too large to be right");
const notTooSmall = z.gte(1e-9, "is too small to be right");
const zeroOrNotTooSmall = z.refine<number>((value) => value === 0 || value >= 1e-9, "is too small to be right");
const mostSheep = 1e9;
const mostOfAnything = 1e15;
const whole = z.refine<number>((value) => Number.isSafeInteger(value), "is not a whole number");

/** Any finite number, in the unit that `what` names. */
export const anyNumber = (what = "a number"): CellKind<number> => numberKind(what, z.number());

/** A whole number, 0 or more: sheep, cases, gathers. */
export const count = (of = "sheep"): CellKind<number> =>
  numberKind(`a whole number of ${of}, 0 or more`, z.number().check(atLeast(0), notTooLarge(mostSheep), whole));

/** A whole number from `least` on, with a name for the thing counted. */
export const countFrom = (least: number, of = "sheep"): CellKind<number> =>
  numberKind(
    `a whole number of ${of}, ${least} or more`,
    z.number().check(atLeast(least), notTooLarge(mostSheep), whole),
  );

/** A whole number of days, 0 or more. Text such as "28d" is refused: a unit in the cell may hide another. */
export const wholeDays: CellKind<number> = numberKind(wantedDays, z.number().check(atLeast(0), atMost(36_525), whole));

/** A whole number of days from `least` to `most`, for intervals that cannot be 0 or that a date may be mistaken for. */
export const daysBetween = (least: number, most: number): CellKind<number> =>
  numberKind(`a whole number of days from ${least} to ${most}`, z.number().check(atLeast(least), atMost(most), whole));

/** A share of the whole, 0 to 1; a cell that shows 5% holds 0.05. */
export const share: CellKind<number> = numberKind(
  "a share from 0 to 1, such as 0.05 or 5%",
  z.number().check(atLeast(0), zeroOrNotTooSmall, atMost(1)),
);

/** A share above 0 and below 1, for rates that cannot be certain. */
export const innerShare: CellKind<number> = numberKind(
  "a share above 0 and below 1, such as 0.02 or 2%",
  z.number().check(z.gt(0, "is not above 0"), notTooSmall, z.lt(1, "is not below 1")),
);

/** How sure the interval is to be, such as 0.95. */
export const confidence: CellKind<number> = numberKind(
  "a confidence from 0.5 to 0.9999, such as 0.95",
  z.number().check(atLeast(0.5), atMost(0.9999)),
);

/** A number from `least` to `most`, both allowed, in the unit that `what` names. */
export const between = (least: number, most: number, what: string): CellKind<number> =>
  numberKind(`${what} from ${least} to ${most}`, z.number().check(atLeast(least), atMost(most)));

/** A number above 0, in the unit that `what` names. */
export const positive = (what: string): CellKind<number> =>
  numberKind(`${what}, above 0`, z.number().check(z.gt(0, "is not above 0"), notTooSmall, notTooLarge(mostOfAnything)));

/** A number, 0 or more, in the unit that `what` names. */
export const nonNegative = (what: string): CellKind<number> =>
  numberKind(`${what}, 0 or more`, z.number().check(atLeast(0), zeroOrNotTooSmall, notTooLarge(mostOfAnything)));
