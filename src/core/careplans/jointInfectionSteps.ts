import { lookForCodd } from "./lookForCodd.ts";
import type { PlannedStep } from "./plannedStep.ts";

export const jointInfectionSteps: readonly PlannedStep[] = [
  {
    what: "To the vet today.",
    why: "A swollen, hot joint is painful and does not get better by itself; the sooner it is seen, the more can be saved.",
    caution: "Do not open the swelling.",
  },
  {
    what: "Until then keep her on a dry bed, with feed and water in reach.",
    why: "She will not walk far for either.",
  },
  lookForCodd,
];
