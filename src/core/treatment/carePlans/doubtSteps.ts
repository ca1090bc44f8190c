import type { ReadLesion } from "../../words/readLesion.ts";
import type { PlannedStep } from "./plannedStep.ts";

/**
 * What to do about a lesion that was written down with doubt, with a slip of the hand, or beside another one.
 *
 * @example
 * doubtSteps({ lesion: "footrot", sure: true, also: [] }) // → []
 */
export const doubtSteps = ({ sure, readAs, also }: ReadLesion): readonly PlannedStep[] => [
  ...(readAs === undefined
    ? []
    : [
        {
          what: `What you wrote was read as "${readAs}". If you meant something else, ask for its plan.`,
          why: "The two words differ by one slip of the hand.",
        },
      ]),
  ...(sure
    ? []
    : [
        {
          what: "You are not sure what it is: clean the foot, and look again in good light. Still not sure: ask your vet before anything is given.",
          why: "The plan for another lesion loses time, and may do harm.",
        },
      ]),
  ...(also.length === 0
    ? []
    : [
        {
          what: `This is the plan for the graver lesion. Ask for the other's too: ${also.map(({ lesion }) => lesion).join(", ")}.`,
          why: "Both need what is in their plans.",
        },
      ]),
];
