import type { PlannedStep } from "./plannedStep.ts";

/** What may be no lameness of the foot at all: the first step wherever the skin is sore or the finding is in doubt. */
export const reportable: PlannedStep = {
  what: "Blisters or raw sores on feet, mouth or teats, or many sheep suddenly lame or feverish: move and treat none, and ring your vet or the authority at once.",
  why: "It may be a disease that must by law be reported, such as foot-and-mouth disease or bluetongue. Look at mouth and teats too: sheep may show little but lameness.",
  caution: "Wear gloves where the skin is sore, and wash your hands: orf infects people.",
};
