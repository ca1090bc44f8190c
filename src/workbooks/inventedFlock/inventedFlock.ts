import { type Animal, inventedAnimals } from "./animals.ts";
import { type CaseRecord, caseRecords } from "./caseRecords.ts";
import { type Gather, monthlyGathers } from "./gathers.ts";
import { type LameSpell, lameSpells } from "./lameSpells.ts";
import { seededRandom } from "./seededRandom.ts";

/** A flock of 420 ewes and their lambs over one year: wholly invented, the same for the same seed. */
export interface InventedFlock {
  readonly animals: readonly Animal[];
  readonly spells: readonly LameSpell[];
  readonly gathers: readonly Gather[];
  readonly cases: readonly CaseRecord[];
}

/** The seed of the flock in the sample workbooks. */
export const sampleSeed = 420;

/**
 * Invents a flock: its animals, who went lame when, and what was written down.
 *
 * @example
 * inventedFlock(sampleSeed).animals.length // → 1060
 */
export function inventedFlock(seed: number): InventedFlock {
  const random = seededRandom(seed);
  const animals = inventedAnimals(random);
  const spells = lameSpells(animals, random);
  return { animals, spells, gathers: monthlyGathers(animals, spells, random), cases: caseRecords(spells, random) };
}
