import { lookForCodd } from "./lookForCodd.ts";
import type { PlannedStep } from "./plannedStep.ts";

export const noLesionSteps: readonly PlannedStep[] = [
  {
    what: "Look at all four feet once more: between the claws, the sole, the white line, the top of the hoof.",
    why: "Early lesions are small, and the lame foot is easily mistaken.",
  },
  lookForCodd,
  {
    what: "Give nothing, and do not trim.",
    why: "There is nothing in the foot to treat, and routine trimming brings lameness rather than preventing it.",
  },
  {
    what: "Lame without a lesion: feel up the leg, and to the vet.",
    why: "The trouble may be in a joint, a muscle, a bone or the back.",
  },
];
