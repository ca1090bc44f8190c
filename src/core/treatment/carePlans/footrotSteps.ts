import { bathLimits } from "./bathLimits.ts";
import { injectionSites } from "./injectionSites.ts";
import { lookAgain } from "./lookAgain.ts";
import { lookForCodd } from "./lookForCodd.ts";
import type { PlannedStep } from "./plannedStep.ts";

/** What follows the look for a reportable disease. */
export const footrotSteps: readonly PlannedStep[] = [
  {
    what: "Treat her the day you see her lame, at most within 3 days.",
    why: "She heals sooner, and has less time to infect the others.",
  },
  lookForCodd,
  {
    what: "Inject the long-acting antibiotic that your vet prescribed.",
    why: "The infection sits under the horn, where nothing put on from outside reaches it.",
    medicine: true,
  },
  injectionSites,
  {
    what: "Clean between the claws, and spray all four feet while she is caught.",
    why: "The other feet may carry it before it shows.",
    medicine: true,
  },
  {
    what: "Do not trim.",
    why: "Trimmed feet heal more slowly, and blood and horn carry the infection to knife and ground.",
  },
  bathLimits,
  {
    when: ({ severe }) => severe,
    what: "Look at her again in 7 days. Only then decide whether loose or bent horn must come away. Not better: to the vet.",
    why: "Once the infection is gone much of the horn grows right by itself, and what is loose then comes away without pain.",
    caution: "Never into living horn, and never until it bleeds.",
  },
  { ...lookAgain, when: ({ severe }) => !severe },
  {
    what: "More than a few cases: plan for the whole flock with your vet, vaccination included.",
    why: "Treating one by one does not keep up with an infection that spreads faster.",
    medicine: true,
  },
];
