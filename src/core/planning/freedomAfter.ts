/**
 * How probable freedom is after finding none, from the chance of finding at least one.
 *
 * @param chance of finding at least one, if the flock is not free, 0 to 1
 * @param prior how probable it was thought before looking, 0 to 1
 *
 * @example
 * freedomAfter(0.95, 0.5) // → 0.9523809524…
 */
// Written so that a prior of 0 stays 0 even when the look cannot miss.
export const freedomAfter = (chance: number, prior: number): number =>
  prior === 0 ? 0 : prior / (1 - (1 - prior) * chance);
