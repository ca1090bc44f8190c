import { lookAgain } from "./lookAgain.ts";
import { lookForCodd } from "./lookForCodd.ts";
import { type Condition, onlyWhen, type PlannedStep } from "./plannedStep.ts";
import { tetanus } from "./tetanus.ts";

const closed: Condition = ({ pusDrained }) => !pusDrained;
const drained: Condition = ({ pusDrained }) => pusDrained;

export const whiteLineAbscessSteps: readonly PlannedStep[] = [
  {
    what: "Make sure of the foot: very lame, and one claw hot.",
    why: "The pus is shut in between horn and flesh, and presses.",
  },
  ...onlyWhen(closed, [
    {
      what: "Let the pus out first: take out the stone or thorn, and open one small hole where the line is soft or dark.",
      why: "Once the pus runs the pain goes, mostly within a day or two.",
      caution: "A small hole is enough. Stop before it bleeds. No pus found: to the vet.",
    },
    {
      what: "No antibiotic yet.",
      why: "Given before it drains, the abscess may form again.",
      caution: "Once it has drained, ask for this plan again with pus_drained.",
      medicine: true,
    },
  ]),
  ...onlyWhen(drained, [
    {
      what: "See that the hole is open and that no stone or thorn is left in it.",
      why: "A hole that closes too soon shuts the pus in again.",
    },
    {
      what: "Antibiotic, if your vet wants one: now is the time.",
      why: "It has drained, so the antibiotic no longer seals the pus in.",
      medicine: true,
    },
  ]),
  {
    what: "Do not strip the wall.",
    why: "She walks on it; bare flesh is slow to grow horn.",
  },
  tetanus,
  lookForCodd,
  {
    what: "No weight on the foot, a swelling above the hoof, or not clearly better two days after the pus ran: to the vet today.",
    why: "The pus may have reached the joint.",
  },
  lookAgain,
];
