import type { PlannedStep } from "./plannedStep.ts";

/** For every plan with a hole in the foot. */
export const tetanus: PlannedStep = {
  what: "Ask your vet whether she is covered against tetanus.",
  why: "It comes from dirt in a deep hole, and a sheep that has it mostly dies.",
  medicine: true,
};
