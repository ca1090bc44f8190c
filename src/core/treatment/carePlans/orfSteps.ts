import { lookForCodd } from "./lookForCodd.ts";
import type { PlannedStep } from "./plannedStep.ts";

export const orfSteps: readonly PlannedStep[] = [
  {
    what: "Have your vet look at it before anything is given.",
    why: "Blisters of a reportable disease heal into scabs too, and orf is a virus, which no antibiotic kills.",
  },
  lookForCodd,
  {
    what: "Do not pull the scabs off; gather and burn or bury those that fall.",
    why: "They bleed and hurt, and the virus lives on in a dry scab for months or years.",
    caution: "Gloves on. A sore on your own hand: go to a doctor, and say that you handle sheep with orf.",
  },
  {
    what: "Treat what has got into the sores as your vet says.",
    why: "Bacteria, and maggots in summer, make them worse.",
    medicine: true,
  },
  {
    what: "Look at the lambs' mouths and the ewes' teats as well, and see that the lambs suck.",
    why: "A ewe with sore teats lets no lamb suck, and may get mastitis.",
  },
  {
    what: "Look at her again in 7 days. Spreading, or worse: to the vet.",
    why: "It heals by itself in some weeks; what does not may be something else.",
  },
];
