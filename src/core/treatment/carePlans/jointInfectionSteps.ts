import { lookForCodd } from "./lookForCodd.ts";
import type { PlannedStep } from "./plannedStep.ts";

export const jointInfectionSteps: readonly PlannedStep[] = [
  {
    what: "To the vet today.",
    why: "A swollen, hot joint is painful and does not get better by itself; the sooner it is seen, the more can be saved.",
    caution: "Do not open the swelling.",
  },
  {
    what: "Ask what her chances are, and how long to try.",
    why: "An infected joint of the foot keeps some damage for good and takes about two months to bear her; some are better killed than left in pain so long.",
  },
  {
    what: "Until then keep her on a dry bed, with feed and water in reach.",
    why: "She will not walk far for either.",
  },
  {
    what: "More than one lamb with swollen joints: ask your vet where it comes from.",
    why: "It gets in at birth by the navel, and through wounds of tagging, docking, shearing or dipping.",
  },
  lookForCodd,
];
