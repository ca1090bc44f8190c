import type { Call } from "./callsIn.ts";

// The arguments whose value these give as it is, by their place; what they look at comes to nothing in the answer.
const values: Readonly<Record<string, (argument: number) => boolean>> = {
  IF: (argument) => argument > 0,
  IFS: (argument) => argument % 2 === 1,
  IFERROR: () => true,
  IFNA: () => true,
  CHOOSE: (argument) => argument > 0,
  SINGLE: () => true,
};

/**
 * Whether the answer of a call is that of the whole formula, at least in some case: it is alone there, or alone in an
 * argument of functions that give their argument's value as it is.
 *
 * @example
 * const calls = callsIn('=IFERROR(FOOT.CLEARDATE(B2,28),"")') ?? [];
 * handsOn(calls, 1) // → true
 */
export function handsOn(calls: readonly Call[], place: number): boolean {
  const call = calls[place];
  if (!call?.alone) return false;
  if (!call.within) return true;
  const around = calls[call.within.call]?.name.toUpperCase().replace(/^_XLFN\.(?:_XLWS\.)?/, "") ?? "";
  return (values[around]?.(call.within.argument) ?? false) && handsOn(calls, call.within.call);
}
