import { lookAgain } from "./lookAgain.ts";
import { lookForCodd } from "./lookForCodd.ts";
import type { PlannedStep } from "./plannedStep.ts";

export const shellyHoofSteps: readonly PlannedStep[] = [
  {
    what: "See whether she is lame on this foot.",
    why: "A loose wall often does not hurt. If she is lame, look for an abscess or another lesion first.",
  },
  lookForCodd,
  {
    what: "Clear the dirt out of the pocket.",
    why: "Packed dirt works its way up and starts an abscess.",
  },
  {
    what: "Take away only the loose horn that traps the dirt. Do not pack the pocket.",
    why: "What cannot hold dirt does no harm and grows out; packing a dirty pocket may shut infection in.",
    caution: "Never into sensitive tissue. Stop before it bleeds.",
  },
  {
    what: "Lame, hot or with pus: follow the plan for a white line abscess.",
    why: "Then dirt has already reached the flesh.",
  },
  lookAgain,
];
