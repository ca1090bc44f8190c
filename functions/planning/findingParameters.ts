import { countFrom, share } from "../../src/reading/numbers.ts";
import { one, oneOr } from "../../src/reading/parameter.ts";

/** What is known before a flock is looked at, for every function about finding lame sheep in it. */
export const findingParameters = {
  flock_size: one(countFrom(1), "Sheep in the flock"),
  design_prevalence: one(share, "The smallest share lame that matters to you, such as 2%"),
  sensitivity: oneOr(share, 1, "Share of the lame sheep looked at that are found lame: 1 is a perfect look"),
};

/** What all of them suppose. */
export const findingNotes = [
  "design_prevalence is turned into whole lame sheep, rounded up and at least one: 2 % of 120 are 3.",
  "It supposes that the sheep looked at are drawn fairly. Lame sheep that hang back, or a look at the first through the gate, find fewer than it says.",
];
