import { chanceByMethod, type FindMethod } from "./chanceByMethod.ts";
import { freedomAfter } from "./freedomAfter.ts";
import type { Inspection } from "./lameInLook.ts";

/**
 * How probable it is that a flock in which no lame sheep was found is below the design prevalence.
 *
 * @param look how the flock was looked at
 * @param prior how probable it was thought before looking, 0 to 1
 * @param method of the chance of finding
 * @returns 0 to 1
 * @throws Problem as exactDetectChance
 * @source Bayes' rule; Martin, Cameron & Greiner 2007, Prev Vet Med 79:71
 * @example
 * freedom({ flockSize: 100, lookedAt: 0, designPrevalence: 0.05, sensitivity: 1 }, 0.5) // → 0.5
 */
export const freedom = (look: Inspection, prior: number, method: FindMethod = "exact"): number =>
  freedomAfter(chanceByMethod[method](look), prior);
