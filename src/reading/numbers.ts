import { numberIn } from "../cells/numberIn.ts";
import { wantedDays } from "../core/words/faults.ts";
import { type CellKind, defineKind, refuse, type WholeNumbers } from "./kind.ts";

/** What a number may not be, and what is wrong with it then, said after the cell. */
interface Limit {
  readonly isRefused: (value: number) => boolean;
  readonly fault: string;
  /** The whole numbers that it lets through. */
  readonly whole: WholeNumbers;
}

const numberKind = (wanted: string, ...limits: readonly Limit[]): CellKind<number> =>
  defineKind({
    wanted,
    holds: "number",
    remember: "texts",
    plain: {
      least: Math.max(...limits.map(({ whole }) => whole.least), Number.MIN_SAFE_INTEGER),
      most: Math.min(...limits.map(({ whole }) => whole.most), Number.MAX_SAFE_INTEGER),
    },
    read(cell) {
      const value = numberIn(cell);
      if (value === undefined) throw refuse(cell, "is not a number", wanted);
      for (const { isRefused, fault } of limits) if (isRefused(value)) throw refuse(cell, fault, wanted);
      return value;
    },
  });

const refused = (isRefused: (value: number) => boolean, fault: string, whole: Partial<WholeNumbers> = {}): Limit => ({
  isRefused,
  fault,
  whole: { least: Number.NEGATIVE_INFINITY, most: Number.POSITIVE_INFINITY, ...whole },
});
const atLeast = (least: number) => refused((value) => value < least, `is below ${least}`, { least: Math.ceil(least) });
const atMost = (most: number) => refused((value) => value > most, `is above ${most}`, { most: Math.floor(most) });
const above = (least: number) =>
  refused((value) => value <= least, `is not above ${least}`, { least: Math.floor(least) + 1 });
const below = (most: number) =>
  refused((value) => value >= most, `is not below ${most}`, { most: Math.ceil(most) - 1 });
// Far beyond any flock, so that no sum, power or table of a computation runs out of numbers or of memory.
const notTooLarge = (most: number) =>
  refused((value) => value > most, "is too large to be right", { most: Math.floor(most) });
const notTooSmall = refused((value) => value < 1e-9, "is too small to be right", { least: 1 });
const zeroOrNotTooSmall = refused((value) => value !== 0 && value < 1e-9, "is too small to be right", { least: 0 });
const mostSheep = 1e9;
const mostOfAnything = 1e15;
const whole = refused((value) => !Number.isSafeInteger(value), "is not a whole number");

/** Any finite number, in the unit that `what` names. */
export const anyNumber = (what = "a number"): CellKind<number> => numberKind(what);

/** A whole number, 0 or more: sheep, cases, gathers. */
export const count = (of = "sheep"): CellKind<number> =>
  numberKind(`a whole number of ${of}, 0 or more`, atLeast(0), notTooLarge(mostSheep), whole);

/** A whole number from `least` on, with a name for the thing counted. */
export const countFrom = (least: number, of = "sheep"): CellKind<number> =>
  numberKind(`a whole number of ${of}, ${least} or more`, atLeast(least), notTooLarge(mostSheep), whole);

/** A whole number of days, 0 or more. Text such as "28d" is refused: a unit in the cell may hide another. */
export const wholeDays: CellKind<number> = numberKind(wantedDays, atLeast(0), atMost(36_525), whole);

/** A whole number of days from `least` to `most`, for intervals that cannot be 0 or that a date may be mistaken for. */
export const daysBetween = (least: number, most: number): CellKind<number> =>
  numberKind(`a whole number of days from ${least} to ${most}`, atLeast(least), atMost(most), whole);

/** A share of the whole, 0 to 1; a cell that shows 5% holds 0.05. */
export const share: CellKind<number> = numberKind(
  "a share from 0 to 1, such as 0.05 or 5%",
  atLeast(0),
  zeroOrNotTooSmall,
  atMost(1),
);

/** A share above 0 and below 1, for rates that cannot be certain. */
export const innerShare: CellKind<number> = numberKind(
  "a share above 0 and below 1, such as 0.02 or 2%",
  above(0),
  notTooSmall,
  below(1),
);

/** How sure the interval is to be, such as 0.95. */
export const confidence: CellKind<number> = numberKind(
  "a confidence from 0.5 to 0.9999, such as 0.95",
  atLeast(0.5),
  atMost(0.9999),
);

/** A number from `least` to `most`, both allowed, in the unit that `what` names. */
export const between = (least: number, most: number, what: string): CellKind<number> =>
  numberKind(`${what} from ${least} to ${most}`, atLeast(least), atMost(most));

/** A number above 0, in the unit that `what` names. */
export const positive = (what: string): CellKind<number> =>
  numberKind(`${what}, above 0`, above(0), notTooSmall, notTooLarge(mostOfAnything));

/** A number, 0 or more, in the unit that `what` names. */
export const nonNegative = (what: string): CellKind<number> =>
  numberKind(`${what}, 0 or more`, atLeast(0), zeroOrNotTooSmall, notTooLarge(mostOfAnything));
