import { bathLimits } from "./bathLimits.ts";
import { footrotSteps } from "./footrotSteps.ts";
import { lookAgain } from "./lookAgain.ts";
import { lookForCodd } from "./lookForCodd.ts";
import { type Condition, onlyWhen, type PlannedStep } from "./plannedStep.ts";

const footrotFlock: Condition = ({ flockHasFootrot }) => flockHasFootrot;
const cleanFlock: Condition = ({ flockHasFootrot }) => !flockHasFootrot;

export const interdigitalDermatitisSteps: readonly PlannedStep[] = [
  ...onlyWhen(footrotFlock, [
    {
      what: "Lambs with scald alone: a footbath or a spray may do, as your vet says.",
      why: "Scald runs through lambs, and most feet heal from outside; injecting all of them would use medicine without need.",
      medicine: true,
    },
    {
      what: "Any other sheep: treat it as footrot, by the steps below.",
      why: "Your flock has footrot, and there a red, wet skin between the claws is mostly how footrot begins.",
    },
    ...footrotSteps,
  ]),
  ...onlyWhen(cleanFlock, [
    {
      what: "Look along the edge of the horn. Horn lifting or a foul smell: follow the plan for footrot.",
      why: "Scald stays in the skin; once the horn lifts it is footrot.",
    },
    lookForCodd,
    {
      what: "Treat the skin between the claws from outside, such as with a spray.",
      why: "The trouble is in the skin, and does not reach under the horn.",
      medicine: true,
    },
    {
      what: "Many in the group have it: ask your vet about a footbath for all of them.",
      why: "Scald runs through a group, lambs above all, and one by one takes too long.",
      medicine: true,
    },
    bathLimits,
    {
      what: "Do not trim.",
      why: "There is no loose horn to take away, and a cut lets infection in.",
    },
    lookAgain,
  ]),
];
