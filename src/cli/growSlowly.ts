import { setFlagsFromString } from "node:v8";

/**
 * Lets the memory of this process grow by so much before it is cleared, where Node.js would let it grow to several times
 * what is in use. Measured, by a tenth over 200 foot books (tests/bench/collate.bench.ts) and by a half over one
 * (tests/bench/recalculation.bench.ts) cost next to no time.
 *
 * @param percent - of what was in use when it was last cleared
 */
export const growSlowly = (percent: 10 | 50): void => setFlagsFromString(`--heap-growing-percent=${percent}`);
