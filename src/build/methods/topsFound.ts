import { readFileSync } from "node:fs";

interface Found {
  readonly sets: number;
  readonly missed: number;
  readonly topBehindFall: number;
}

/** What tests/references/benchmarking/grid.ts found; it takes minutes, so it is read when a page is made. */
export function topsFound(): string {
  const path = new URL("../../../tests/references/benchmarking/grid.json", import.meta.url);
  const { sets, missed, topBehindFall }: Found = JSON.parse(readFileSync(path, "utf8"));
  const number = (count: number): string => count.toLocaleString("en-GB");
  return `${number(sets)} random sets of flocks of very unlike sizes, ${number(topBehindFall)} of them with such a top behind a fall, ${missed === 0 ? "none was" : `${number(missed)} were`} missed against a grid of 240 spreads`;
}
