import { lookForCodd } from "./lookForCodd.ts";
import type { PlannedStep } from "./plannedStep.ts";

export const toeGranulomaSteps: readonly PlannedStep[] = [
  {
    what: "To the vet.",
    why: "The red lump is full of nerves and blood; taking it away needs pain relief and stopping the blood.",
    caution: "Do not cut or burn it yourself.",
  },
  lookForCodd,
  {
    what: "Ask yourself what came before it: trimming too deep, or an old sore foot.",
    why: "Most come from a cut into the flesh, so less trimming means fewer of them.",
  },
];
