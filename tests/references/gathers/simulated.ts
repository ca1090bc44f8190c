import { writeFileSync } from "node:fs";

/** Turns a line of a table. */
export const times = 2000;

/** How alike the sheep of a gather are: an intra-gather correlation. */
export const spreads = [0, 0.01, 0.03, 0.05] as const;

/** The standard deviation of the gathers' true shares about 5 % that goes with it, in words. */
export const points = (correlation: number): string =>
  `${(100 * Math.sqrt(correlation * 0.05 * 0.95)).toFixed(1)} points`;

export const of = <T>(count: number, make: (index: number) => T): T[] =>
  Array.from({ length: count }, (_, index) => make(index));

/** Writes a table beside these scripts. */
export const write = (name: string, table: string): void =>
  writeFileSync(new URL(`${name}.md`, import.meta.url), `${table}\n`);
