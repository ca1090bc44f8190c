import type { Look } from "../writing/looks.ts";

/** A figure of the page; undefined is not known, and then the words say why. */
export interface PageLine {
  readonly label: string;
  readonly value: number | undefined;
  readonly low?: number | undefined;
  readonly high?: number | undefined;
  /** Of the numbers. */
  readonly look: Look;
  readonly words: string;
}

/** A flock in the order of the steadied shares. */
interface RankedFlock {
  /** Its letter, or the name of the flock that the page is about. */
  readonly called: string;
  readonly own: boolean;
  readonly steadied: number;
  readonly low: number;
  readonly high: number;
}

/** All that stands on the page for one flock. */
export interface FlockPageContent {
  /** The day the file says it was made, as 2026-10-31. */
  readonly made: string;
  readonly year: number;
  readonly flock: string;
  /** How many flocks are compared. */
  readonly compared: number;
  /** Where the flock stands among the others. */
  readonly standing: readonly PageLine[];
  /** What is done about lameness. */
  readonly done: readonly PageLine[];
  /** None where nothing can be ranked. */
  readonly ranked: readonly RankedFlock[];
  /** The share to stay below. */
  readonly target: number;
}
