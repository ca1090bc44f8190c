import type { PlannedStep } from "./plannedStep.ts";

/** In a flock that has it, it hides beside other lesions. */
export const lookForCodd: PlannedStep = {
  when: ({ flockHasCodd }) => flockHasCodd,
  what: "Look at the top of the hoof too, where hair meets horn. A sore there: follow the plan for contagious ovine digital dermatitis.",
  why: "Your flock has it, and it can sit on the same foot as another lesion.",
};
