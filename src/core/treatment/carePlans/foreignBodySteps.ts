import { lookAgain } from "./lookAgain.ts";
import { lookForCodd } from "./lookForCodd.ts";
import type { PlannedStep } from "./plannedStep.ts";
import { tetanus } from "./tetanus.ts";

export const foreignBodySteps: readonly PlannedStep[] = [
  {
    what: "Take the stone or thorn out whole, and look where it went in.",
    why: "What is left behind keeps the foot sore.",
    caution: "Deep in the sole or near a joint: leave it in, and to the vet.",
  },
  {
    when: ({ pusDrained }) => !pusDrained,
    what: "The foot is hot, or pus comes: follow the plan for a white line abscess.",
    why: "Then there is pus under the horn.",
  },
  tetanus,
  {
    what: "No weight on the foot after it is out, or not clearly better in two days: to the vet today.",
    why: "It may have reached a joint.",
  },
  lookForCodd,
  lookAgain,
];
