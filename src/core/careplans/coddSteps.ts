import { lookAgain } from "./lookAgain.ts";
import type { PlannedStep } from "./plannedStep.ts";
import { shareOverTwoSites } from "./shareOverTwoSites.ts";

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
    what: "Inject the antibiotic that your vet prescribed, where its data sheet says.",
    why: "Of all treatments the injection is the most likely to help.",
    medicine: true,
  },
  shareOverTwoSites,
  {
    when: ({ severe }) => severe,
    what: "Severe: give her time, on clean dry ground, and agree with your vet when to stop.",
    why: "Severe cases answer poorly and grow new horn slowly.",
  },
  {
    what: "Do not trim the loose horn.",
    why: "The flesh under it is raw; the horn covers it until new horn has grown.",
  },
  {
    when: ({ flockHasFootrot }) => flockHasFootrot,
    what: "Get the footrot in the flock under control as well.",
    why: "Feet that have footrot catch this more easily.",
  },
  lookAgain,
  {
    what: "Keep at it: expect fewer cases in the second year.",
    why: "Numbers fall slowly, mostly not within the first season.",
  },
  {
    what: "Keep it out: ask every seller whether the flock has had it, and quarantine what you buy.",
    why: "Sound-looking feet prove nothing.",
  },
];
