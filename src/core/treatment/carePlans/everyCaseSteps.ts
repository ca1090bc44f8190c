import type { PlannedStep } from "./plannedStep.ts";

/**
 * What follows the steps for the lesion.
 *
 * @param catching - whether it passes from sheep to sheep, or may
 * @example
 * everyCaseSteps(true).some(({ what }) => what.includes("culling")) // → true
 * everyCaseSteps(false).some(({ what }) => what.includes("culling")) // → false
 */
export const everyCaseSteps = (catching: boolean): readonly PlannedStep[] => [
  {
    what: "Ask your vet whether she needs something against the pain.",
    why: "A lame foot hurts, and a sheep in pain eats less and stays behind.",
    caution: "It has withdrawal days of its own.",
    medicine: true,
  },
  ...(catching
    ? [
        {
          what: "Disinfect hands and knife before the next animal.",
          why: "They carry the infection from foot to foot.",
        },
      ]
    : []),
  {
    what: "Mark her, and write down: tag, date, lesion, feet treated, what was given, how much, by which route, batch, withdrawal days.",
    why: "Without a record nobody knows when she is clear or that it is her second case.",
    caution: "Write the withdrawal days down even when they are 0.",
  },
  {
    what: "Work out the clear date before she goes for food. Her milk has days of its own.",
    why: "The withdrawal period runs from the last dose, and data sheets give one for meat and another for milk.",
    caution: "Days that are missing are not 0 days: hold her until you know them.",
  },
  {
    what: "Load her only when she walks without pain and bears weight on every foot; in doubt ask your vet first whether she may be loaded at all.",
    why: "The transport law of the EU and of Great Britain calls an animal that cannot move without pain unfit for the journey, be it to market or to slaughter.",
  },
  catching
    ? {
        what: "Keep her apart until she is sound, at housing, turnout and weaning above all.",
        why: "Where sheep are crowded or come onto clean ground, one lame sheep infects many.",
      }
    : {
        what: "Keep her on dry ground, near feed and water, until she is sound.",
        why: "She does not walk far on a sore foot, and falls off in condition.",
      },
  {
    what: "She cannot rise, bears no weight although she was treated, or her pain cannot be eased: ask your vet the same day whether to have her killed humanely.",
    why: "A sheep that cannot get better must not be left to suffer.",
  },
  catching
    ? {
        what: "Two cases in one season: consider culling her, once she is sound and clear.",
        why: "A few sheep that fall ill again and again keep the infection in the flock.",
      }
    : {
        what: "The same again in one season: ask your vet why.",
        why: "What comes back has a cause in ground, handling, trimming or breeding.",
      },
  {
    what: "Ask what else binds you: some countries want footrot and other diseases reported, and organic rules have limits and withdrawal periods of their own.",
    why: "Law and certifier differ from place to place, and none of it can be seen from here.",
  },
];
