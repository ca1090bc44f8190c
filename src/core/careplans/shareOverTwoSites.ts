import type { PlannedStep } from "./plannedStep.ts";

/** How a long-acting injection is given, for every plan that has one. */
export const shareOverTwoSites: PlannedStep = {
  what: "Share the volume over two sites, one on each side, unless the data sheet says otherwise. Draw back before you inject.",
  why: "A long-acting injection is absorbed over about two days and irritates the muscle; half in each place hurts less and is taken up better.",
  caution:
    "Choose the site that the data sheet allows, away from major nerves. Blood in the syringe: take the needle out and choose another place. If you prick yourself, get medical help and take the data sheet along.",
  medicine: true,
};
