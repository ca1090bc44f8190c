import { bathLimits } from "./bathLimits.ts";
import { injectionSites } from "./injectionSites.ts";
import { lookAgain } from "./lookAgain.ts";
import type { PlannedStep } from "./plannedStep.ts";

export const coddSteps: readonly PlannedStep[] = [
  {
    what: "Have your vet confirm it.",
    why: "It looks like footrot but starts at the top of the hoof, and is treated otherwise.",
  },
  {
    when: ({ flockHasCodd }) => !flockHasCodd,
    what: "Treat it as the first case: keep her and her group away from the rest, and look at every foot in the group.",
    why: "It spreads from sheep to sheep, and a flock that has it rarely gets rid of it.",
  },
  {
    what: "Inject the antibiotic that your vet prescribed.",
    why: "It lies under the horn, which a bath or a spray does not reach.",
    medicine: true,
  },
  injectionSites,
  {
    when: ({ severe }) => severe,
    what: "Severe: give her time, on clean dry ground, and agree with your vet when to stop.",
    why: "Severe cases answer poorly and grow new horn slowly, if at all.",
  },
  {
    what: "Do not trim the loose horn.",
    why: "The flesh under it is raw; the horn covers it until new horn has grown.",
  },
  bathLimits,
  {
    when: ({ flockHasFootrot }) => flockHasFootrot,
    what: "Get the footrot in the flock under control as well.",
    why: "Feet that have footrot catch this more easily.",
  },
  lookAgain,
  {
    what: "Keep it out: ask every seller whether the flock has had it, and quarantine what you buy.",
    why: "Feet that look right prove nothing, and once it is in, numbers fall slowly.",
  },
];
