import type { Topic } from "../src/definition/topics.ts";

/** One warning in words, said wherever a function that it concerns is offered. */
export interface Caution {
  readonly topic: Topic;
  readonly words: string;
  /** The heart of it, for a list of functions that has room for a line. */
  readonly brief: string;
}

/** Every caution once, so that the functions, the pages and CAUTIONS say the same. */
export const cautions = {
  notSound: {
    topic: "animals",
    words:
      "This counts what was written down; it does not know why an animal is not sound. What to do next is your vet's to say: do not give more of a medicine, give it again or change it without asking. Read the data sheet, keep to the withdrawal days of every treatment, follow your local rules, and do not move an animal that is lame or in pain.",
    brief: "It does not know why an animal is not sound: ask your vet before you treat it again.",
  },
  withdrawal: {
    topic: "dates",
    words:
      "This counts days; it does not know the product. Take the withdrawal period from the product's data sheet or from the prescribing vet, who may set a longer one, follow your local rules, and when in doubt hold the animal.",
    brief: "It does not know the product: days from data sheet or vet; when in doubt hold the animal.",
  },
  offLabel: {
    topic: "dates",
    words:
      "Only a vet may decide to use a product off its label and set its withdrawal period. This gives the least that the law allows; what the vet has written down, if longer, stands. Read the data sheet and follow your local rules, and ask the vet when they do not fit. For a substance that is forbidden in food animals no period is long enough: such an animal must never go for food.",
    brief:
      "Only a vet may set this period; in doubt, or where a substance is forbidden, the animal must not go for food.",
  },
  courses: {
    topic: "dates",
    words:
      "This counts days; it does not know the product. Take the intervals from the product's data sheet or from your vet, follow your local rules, and read there what to do when a dose comes late.",
    brief: "It does not know the product: intervals from data sheet or vet.",
  },
  carePlan: {
    topic: "treatment",
    words:
      "This is common practice for a usual case; it has not seen your sheep. Medicines only as your vet prescribed, after reading the data sheet, by its route and with its withdrawal days, and by your local rules. Not sure what it is, or it does not heal: ask your vet. Blisters, or many sheep lame at once: ring your vet before you treat or move any.",
    brief: "A usual case; it has not seen your sheep. Medicines only as your vet prescribed; in doubt ask the vet.",
  },
  dosing: {
    topic: "treatment",
    words:
      "This works out volumes; it does not know the animal or the product. Take dose, strength, route and the most per site from the data sheet or the prescribing vet, weigh rather than guess, follow your local rules, and when in doubt ask the vet before you inject. Write the withdrawal days down with the dose. Some injections are dangerous to people: if you prick yourself, get medical help and take the data sheet along.",
    brief: "It does not know animal or product: dose and route from data sheet or vet; in doubt ask before you inject.",
  },
  footbath: {
    topic: "treatment",
    words:
      "Read the product's safety sheet first, wear gloves and goggles, and work in the open. Formalin fumes are toxic, irritate, can bring on allergy and cause cancer; zinc sulphate damages eyes and is very toxic to life in water. Do not let sheep drink from the bath, ask your vet which product to use (copper poisons sheep easily, and an antibiotic bath is the vet's alone to prescribe), keep to its withdrawal days if it has any, and follow local rules for getting rid of it.",
    brief:
      "Read the safety sheet first; gloves, goggles, open air. Toxic to people, sheep and water: ask your vet which product.",
  },
  medicineUse: {
    topic: "medicines",
    words:
      "A low figure is no aim in itself: a sheep that needs treatment gets it, as your vet prescribed and as the data sheet says. Take strengths from the data sheet, follow your local rules on records of medicines, and talk the figures over with your vet.",
    brief: "A sheep that needs treatment gets it, as your vet prescribed.",
  },
  recordCheck: {
    topic: "records",
    words:
      "This finds slips of the hand; it cannot tell whether a record is true or complete. A record without findings may still be wrong: keep what your local rules ask you to keep, look withdrawal days up in the data sheet, and ask your vet when a treatment does not look right.",
    brief: "It finds slips, not whether a record is true or complete; look withdrawal days up in the data sheet.",
  },
} as const satisfies Readonly<Record<string, Caution>>;
