import { countryNumber } from "./countries.ts";
import type { Tag } from "./tagKey.ts";

/**
 * A tag as it is printed in full, whose key is put together only when it is asked for: a flock has thousands, and most
 * are told apart by how they are written.
 */
export class PrintedTag implements Tag {
  // Declared only: fields that are defined cost more than all else about a tag.
  declare readonly shown: string;
  declare readonly spelling: number;
  declare readonly apart: object;
  declare private known: string | undefined;

  /** @param shown - of which {@link printedKey} gives a key */
  constructor(shown: string, spelling: number, apart: object) {
    this.shown = shown;
    this.spelling = spelling;
    this.apart = apart;
    this.known = undefined;
  }

  get key(): string {
    this.known ??= keyOf(this.shown);
    return this.known;
  }
}

/** Whether a tag is written as it is printed in full: two letters, zero, flock mark and number. */
export const looksPrinted = (tag: string): boolean => tag.length === 17 && inFull.test(tag);

const inFull = /^[A-Z]{2} 0 \d{6} \d{5}$/;

/**
 * The key of a tag that is written as it is printed in full; undefined for any other, and where no country has the letters.
 *
 * @example
 * printedKey("ZZ 0 123456 00042") // → "999012345600042"
 */
export const printedKey = (tag: string): string | undefined =>
  looksPrinted(tag) && countryOf(tag) !== undefined ? keyOf(tag) : undefined;

const countryOf = (tag: string): string | undefined => countryNumber(tag.slice(0, 2));

const keyOf = (tag: string): string => `${countryOf(tag)}0${tag.slice(5, 11)}${tag.slice(12)}`;
