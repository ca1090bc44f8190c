import { gammaTails } from "./gammaTails.ts";

/**
 * The chance of a normal value at least as far from the middle as `z`, on either side.
 *
 * @param z in standard deviations
 * @example
 * normalTwoSided(1.959963984540054) // → 0.05
 */
export const normalTwoSided = (z: number): number => (z === 0 ? 1 : gammaTails((z * z) / 2, 0.5).upper);
