import type { PlannedStep } from "./plannedStep.ts";

/** What may be no lameness of the foot at all, for every plan whose finding it could be mistaken for. Common practice. */
export const reportable: PlannedStep = {
  what: "Blisters or raw sores on feet, mouth or teats, or many sheep suddenly lame or feverish: move none, and ring your vet at once.",
  why: "It may be a disease that must by law be reported.",
};
