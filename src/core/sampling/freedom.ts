import { detectChance, type Look } from "./detectChance.ts";

/**
 * How probable it is that a flock in which no lame sheep was found is below the design prevalence.
 *
 * @param look how the flock was looked at
 * @param prior how probable it was thought before looking, 0 to 1
 * @returns 0 to 1
 * @throws Problem as detectChance
 * @source Bayes' rule; Martin, Cameron & Greiner 2007, Prev Vet Med 79:71
 * @example
 * freedom({ flockSize: 100, lookedAt: 0, designPrevalence: 0.05, sensitivity: 1 }, 0.5) // → 0.5
 */
export const freedom = (look: Look, prior: number): number => freedomAfter(detectChance(look), prior);

/**
 * The same from the chance of finding at least one, however that was worked out.
 *
 * @example
 * freedomAfter(0.95, 0.5) // → 0.9523809524…
 */
// Written so that a prior of 0 stays 0 even when the look cannot miss.
export const freedomAfter = (chance: number, prior: number): number =>
  prior === 0 ? 0 : prior / (1 - (1 - prior) * chance);
