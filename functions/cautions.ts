import type { Topic } from "../src/definition/topics.ts";

/** One warning in words, said wherever a function that it concerns is offered. */
export interface Caution {
  readonly topic: Topic;
  readonly words: string;
}

/** Every caution once, so that the functions, the pages and CAUTIONS say the same. */
export const cautions = {
  withdrawal: {
    topic: "dates",
    words:
      "This counts days; it does not know the product. Take the withdrawal period from the product's data sheet or from the prescribing vet, who may set a longer one, follow your local rules, and when in doubt hold the animal.",
  },
} as const satisfies Readonly<Record<string, Caution>>;
