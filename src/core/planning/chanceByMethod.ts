import { detectChance } from "./detectChance.ts";
import { exactDetectChance } from "./exactDetectChance.ts";
import type { Inspection } from "./lameInLook.ts";

/** "exact": the hypergeometric chance. "formula": MacDiarmid's approximation, which is never above it. */
export type FindMethod = keyof typeof chanceByMethod;

/** The chance of finding at least one lame sheep, by the name of its method. */
export const chanceByMethod = {
  exact: exactDetectChance,
  formula: detectChance,
} as const satisfies Record<string, (look: Inspection) => number>;
