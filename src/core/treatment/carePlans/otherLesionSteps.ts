import { lookForCodd } from "./lookForCodd.ts";
import type { PlannedStep } from "./plannedStep.ts";

export const otherLesionSteps: readonly PlannedStep[] = [
  lookForCodd,
  {
    what: "To the vet.",
    why: "What is not known, or does not heal, needs someone who can find out what it is.",
    caution: "Give nothing before it is known what it is: a wrong treatment hides it.",
  },
];
