import type { PlannedStep } from "./plannedStep.ts";

/** The second look, common practice. */
export const lookAgain: PlannedStep = {
  what: "Look at her again in 7 days. Not better: to the vet.",
  why: "Most feet that were treated right are clearly better in a week; one that is not may be something else.",
};
