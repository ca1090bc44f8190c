/**
 * Rounded up to whole sheep, at least one; what exceeds a whole number by rounding alone (1e-9) does not ask for one more.
 *
 * @example
 * wholeUp(1000 * 0.07) // → 70 (1000 × 0.07 is 70.00000000000001 to a computer)
 */
export const wholeUp = (sheep: number): number => Math.max(Math.ceil(sheep - 1e-9), 1);
