import type { Lesion } from "../lesions/lesionName.ts";
import { coddSteps } from "./coddSteps.ts";
import { everyCaseSteps } from "./everyCaseSteps.ts";
import { footrotSteps } from "./footrotSteps.ts";
import { foreignBodySteps } from "./foreignBodySteps.ts";
import { interdigitalDermatitisSteps } from "./interdigitalDermatitisSteps.ts";
import { jointInfectionSteps } from "./jointInfectionSteps.ts";
import { noLesionSteps } from "./noLesionSteps.ts";
import { otherLesionSteps } from "./otherLesionSteps.ts";
import type { Findings, PlannedStep } from "./plannedStep.ts";
import { shellyHoofSteps } from "./shellyHoofSteps.ts";
import { toeGranulomaSteps } from "./toeGranulomaSteps.ts";
import { whiteLineAbscessSteps } from "./whiteLineAbscessSteps.ts";

export interface CareStep {
  /** 1 for the first. */
  readonly step: number;
  readonly what: string;
  readonly why: string;
  readonly caution: string | undefined;
}

/** Said at every step with a medicine, since no plan knows the product or the animal. */
const medicineCaution = "Only as your vet prescribed; read the data sheet.";

const plans: Readonly<Record<Lesion, readonly PlannedStep[]>> = {
  "interdigital dermatitis": interdigitalDermatitisSteps,
  footrot: footrotSteps,
  "contagious ovine digital dermatitis": coddSteps,
  "white line abscess": whiteLineAbscessSteps,
  "shelly hoof": shellyHoofSteps,
  "toe granuloma": toeGranulomaSteps,
  "joint infection": jointInfectionSteps,
  "foreign body": foreignBodySteps,
  other: otherLesionSteps,
  "no lesion": noLesionSteps,
};

/**
 * What to do with one lame sheep, in order: the steps for its lesion, then those for every case.
 *
 * Common practice, no source, except where a step's definition page names one. No medicine and no dose is named.
 *
 * @example
 * carePlan("footrot", { flockHasFootrot: true, flockHasCodd: false, pusDrained: false, severe: false })[0]
 * // → { step: 1, what: "Treat her the day you see her lame, at most within 3 days.", why: …, caution: undefined }
 */
export const carePlan = (lesion: Lesion, found: Findings): readonly CareStep[] =>
  [...plans[lesion], ...everyCaseSteps]
    .filter(({ when }) => when?.(found) ?? true)
    .map(({ what, why, caution, medicine }, place) => ({
      step: place + 1,
      what,
      why,
      caution: medicine ? [medicineCaution, caution].filter(Boolean).join(" ") : caution,
    }));
