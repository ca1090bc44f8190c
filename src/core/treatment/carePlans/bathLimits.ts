import type { PlannedStep } from "./plannedStep.ts";

/** What does not belong into a footbath, for the plans of infections that are bathed. */
export const bathLimits: PlannedStep = {
  what: "No antibiotic in a footbath unless your vet has prescribed that, and no formalin bath for raw feet.",
  why: "An antibiotic bath is off its label, breeds resistance and is hard to get rid of; formalin on raw flesh hurts badly.",
  medicine: true,
};
