import { lookAgain } from "./lookAgain.ts";
import { lookForCodd } from "./lookForCodd.ts";
import type { PlannedStep } from "./plannedStep.ts";

export const overgrownHoofSteps: readonly PlannedStep[] = [
  {
    what: "See whether she is lame on this foot. Not lame: leave the horn alone.",
    why: "Long horn wears off by itself as the year goes, and trimming brings more lameness than it prevents.",
  },
  {
    what: "Lame: look for what made it grow, between the claws, under the horn and at the toe, and follow the plan for that first.",
    why: "A sore foot is not walked on and so not worn down; long horn mostly follows the lameness, and may hide a granuloma.",
  },
  lookForCodd,
  {
    what: "Only horn that turns under, breaks off or keeps her from walking may come away, a little at a time.",
    why: "Cuts into the flesh bleed, let infection in and end in granulomas.",
    caution: "Never into living horn; stop before it bleeds.",
  },
  lookAgain,
];
