/** Chance that gives the same run of numbers for the same seed, so that an invented flock can be made again. */
export interface SeededRandom {
  /** A number from 0 up to, not including, 1. */
  readonly share: () => number;
  readonly happens: (chance: number) => boolean;
  /** A whole number from `low` to `high`, both included. */
  readonly whole: (low: number, high: number) => number;
  readonly pick: <T>(choices: readonly T[]) => T;
  /** Picks a name in proportion to its weight. */
  readonly weighted: <K extends string>(weights: Readonly<Partial<Record<K, number>>>) => K;
}

/**
 * The generator known as mulberry32 (public domain, from memory): 32 bits of state are plenty for a flock of a
 * thousand, and whole-number steps give the same numbers on every machine.
 *
 * @example
 * seededRandom(1).whole(1, 6) // → 4
 */
export function seededRandom(seed: number): SeededRandom {
  let state = seed >>> 0;
  const share = () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296;
  };
  const whole = (low: number, high: number) => low + Math.floor(share() * (high - low + 1));
  const pick = <T>(choices: readonly T[]): T => {
    if (choices.length === 0) throw new RangeError("there is nothing to pick from");
    return choices[whole(0, choices.length - 1)] as T;
  };
  const weighted = <K extends string>(weights: Readonly<Partial<Record<K, number>>>): K => {
    const entries = Object.entries(weights) as [K, number][];
    let left = share() * entries.reduce((sum, [, weight]) => sum + weight, 0);
    const found = entries.find(([, weight]) => {
      left -= weight;
      return left < 0;
    });
    if (!found) throw new RangeError("the weights add up to nothing");
    return found[0];
  };
  return { share, happens: (chance) => share() < chance, whole, pick, weighted };
}
