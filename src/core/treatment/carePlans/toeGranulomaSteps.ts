import { lookForCodd } from "./lookForCodd.ts";
import type { PlannedStep } from "./plannedStep.ts";

export const toeGranulomaSteps: readonly PlannedStep[] = [
  {
    what: "To the vet.",
    why: "The red lump is full of blood and very painful; taking it away needs pain relief and stopping the blood.",
    caution: "Do not cut or burn it yourself.",
  },
  {
    what: "Ask whether it can heal, and what to do if it comes back.",
    why: "Some come back again and again, and she should not be kept lame for them.",
  },
  lookForCodd,
  {
    what: "Ask yourself what came before it: trimming too deep, or an old sore foot.",
    why: "Most come from a cut into the flesh, so less trimming means fewer of them.",
  },
];
