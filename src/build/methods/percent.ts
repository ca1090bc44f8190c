/**
 * A share as the pages print it.
 *
 * @example
 * percent(0.0312, 1) // → "3.1 %"
 */
export const percent = (share: number, decimals = 0): string => `${(100 * share).toFixed(decimals)} %`;
