import type { FindMethod } from "../../src/core/planning/chanceByMethod.ts";
import { countFrom, share } from "../../src/reading/numbers.ts";
import { one, oneOr } from "../../src/reading/parameter.ts";
import { choice } from "../../src/reading/words.ts";

const methods = ["exact", "formula"] as const satisfies readonly FindMethod[];

/** What is known before a flock is looked at, for every function about finding lame sheep in it. */
export const findingParameters = {
  flock_size: one(countFrom(1), "Sheep in the flock"),
  design_prevalence: one(share, "The smallest share lame that matters to you, such as 2%"),
  sensitivity: oneOr(share, 1, "Share of the lame sheep looked at that are found lame: 1 is a perfect look"),
  method: oneOr(choice(...methods), "exact", "How it is worked out: exact, or formula for the usual approximation"),
};

/** What all of them suppose. */
export const findingNotes = [
  "design_prevalence is turned into whole lame sheep, rounded up and at least one: 2 % of 120 are 3.",
  "It supposes that the sheep looked at are drawn fairly. Lame sheep that hang back, or a look at the first through the gate, find fewer than it says.",
  'SAMPLETOFIND, DETECTCHANCE and FREEDOM agree with each other: the number that the first gives is the smallest that brings the chance wanted. "formula" in all three gives the usual approximation instead (MacDiarmid 1988), which is never above the exact chance and never asks for fewer sheep.',
];
