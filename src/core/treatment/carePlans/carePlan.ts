import type { Lesion } from "../../words/lesionName.ts";
import type { ReadLesion } from "../../words/readLesion.ts";
import { coddSteps } from "./coddSteps.ts";
import { doubtSteps } from "./doubtSteps.ts";
import { everyCaseSteps } from "./everyCaseSteps.ts";
import { footrotSteps } from "./footrotSteps.ts";
import { foreignBodySteps } from "./foreignBodySteps.ts";
import { interdigitalDermatitisSteps } from "./interdigitalDermatitisSteps.ts";
import { jointInfectionSteps } from "./jointInfectionSteps.ts";
import { noLesionSteps } from "./noLesionSteps.ts";
import { orfSteps } from "./orfSteps.ts";
import { otherLesionSteps } from "./otherLesionSteps.ts";
import { overgrownHoofSteps } from "./overgrownHoofSteps.ts";
import type { Findings, PlannedStep } from "./plannedStep.ts";
import { reportable } from "./reportable.ts";
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
const medicineCaution =
  "Only as your vet prescribed; read the data sheet, keep to its route and write its withdrawal days down.";

interface Plan {
  readonly steps: readonly PlannedStep[];
  /** The skin is sore, or nobody knows why she is lame: it may be a disease that must be reported. */
  readonly maybeReportable?: true;
  /** It passes from sheep to sheep, or may. */
  readonly catching?: true;
}

const plans: Readonly<Record<Lesion, Plan>> = {
  "interdigital dermatitis": { steps: interdigitalDermatitisSteps, maybeReportable: true, catching: true },
  footrot: { steps: footrotSteps, maybeReportable: true, catching: true },
  "contagious ovine digital dermatitis": { steps: coddSteps, maybeReportable: true, catching: true },
  "white line abscess": { steps: whiteLineAbscessSteps },
  "shelly hoof": { steps: shellyHoofSteps },
  "toe granuloma": { steps: toeGranulomaSteps },
  "joint infection": { steps: jointInfectionSteps },
  "foreign body": { steps: foreignBodySteps },
  "overgrown hoof": { steps: overgrownHoofSteps },
  "orf or strawberry footrot": { steps: orfSteps, maybeReportable: true, catching: true },
  other: { steps: otherLesionSteps, maybeReportable: true, catching: true },
  "no lesion found": { steps: noLesionSteps, maybeReportable: true },
};

/**
 * What to do with one lame sheep, in order: the look for a disease that must be reported, the steps for its lesion, then
 * those for every case. A finding in doubt is treated as one that may be reportable and catching.
 *
 * What each step rests on stands in docs/methods/care.md. No medicine and no dose is named.
 *
 * @param found - a lesion, or one as `readLesion` reads it, with what is doubtful about it
 * @example
 * carePlan("footrot", { flockHasFootrot: true, flockHasCodd: false, pusDrained: false, severe: false })[1]
 * // → { step: 2, what: "Treat her the day you see her lame, at most within 3 days.", why: …, caution: undefined }
 */
export function carePlan(found: Lesion | ReadLesion, known: Findings): readonly CareStep[] {
  const read: ReadLesion = typeof found === "string" ? { lesion: found, sure: true, also: [] } : found;
  const named = [read, ...read.also].map(({ lesion, sure }) => ({ ...plans[lesion], sure }));
  const { steps } = plans[read.lesion];
  const some = (holds: (plan: (typeof named)[number]) => boolean | undefined) =>
    named.some((plan) => !plan.sure || holds(plan));
  return [
    ...(some(({ maybeReportable }) => maybeReportable) ? [reportable] : []),
    ...doubtSteps(read),
    ...steps,
    ...everyCaseSteps(some(({ catching }) => catching)),
  ]
    .filter(({ when }) => when?.(known) ?? true)
    .map(({ what, why, caution, medicine }, index) => ({
      step: index + 1,
      what,
      why,
      caution: medicine ? [medicineCaution, caution].filter(Boolean).join(" ") : caution,
    }));
}
