import type { PlannedStep } from "./plannedStep.ts";

/** What follows every lesion. */
export const everyCaseSteps: readonly PlannedStep[] = [
  {
    what: "Ask your vet whether she needs something against the pain.",
    why: "A lame foot hurts, and a sheep in pain eats less and stays behind.",
    caution: "It has withdrawal days of its own.",
    medicine: true,
  },
  {
    what: "Disinfect hands and knife before the next animal.",
    why: "They carry the infection from foot to foot.",
  },
  {
    what: "Mark her, and write down: tag, date, lesion, feet treated, what was given and how much, withdrawal days.",
    why: "Without a record nobody knows when she is clear or that it is her second case.",
    caution: "Write the withdrawal days down even when they are 0.",
  },
  {
    what: "Work out the clear date (CLEARDATE) before she goes for food. Her milk has days of its own.",
    why: "The withdrawal period runs from the last dose, and data sheets give one for meat and another for milk.",
    caution: "Days that are missing are not 0 days: hold her until you know them.",
  },
  {
    what: "Keep her apart at housing, turnout and weaning until she is sound.",
    why: "Where sheep are crowded or come onto clean ground, one lame sheep infects many.",
  },
  {
    what: "Two cases in one season: consider culling her.",
    why: "A few sheep that fall ill again and again keep the infection in the flock.",
  },
];
