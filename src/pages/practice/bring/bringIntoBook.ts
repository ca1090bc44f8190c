import type { Day } from "../../../cells/day.ts";
import { isoText } from "../../../cells/day.ts";
import { type BringOptions, bringRecords, type Source } from "../../../workbooks/bring/bringRecords.ts";
import { type BroughtInWords, broughtInWords } from "../../../workbooks/bring/broughtInWords.ts";
import { fillBook } from "../../../workbooks/bring/fillBook.ts";
import { plainHeading } from "../../../workbooks/bring/matchHeadings.ts";
import { cases } from "../../../workbooks/tables/cases.ts";
import { gathers } from "../../../workbooks/tables/gathers.ts";

/** A heading of the person's own, and what it may be taken for. */
export interface OwnHeading {
  readonly heading: string;
  /** A heading of the book, or "-" where the column is left out; "" where it is not known. */
  readonly taken: string;
  readonly choices: readonly string[];
}

export interface IntoBook {
  readonly bytes: Uint8Array;
  readonly words: BroughtInWords;
  /** The headings that are not called as the book calls them. */
  readonly headings: readonly OwnHeading[];
}

/**
 * Brings records into a new Flock foot book.
 *
 * @param empty - the file of an empty book
 * @throws NoRecords, or another WorkbookProblem, with a sentence that says what stands in the way
 */
export function bringIntoBook(
  sources: readonly Source[],
  asked: Omit<BringOptions, "made">,
  empty: Uint8Array,
  today: Day,
): IntoBook {
  const brought = bringRecords(sources, { ...asked, made: isoText(today) });
  const headings = new Map<string, OwnHeading>();
  for (const place of brought.places)
    for (const [heading, taken] of place.headings)
      if (plainHeading(heading) !== plainHeading(taken))
        headings.set(plainHeading(heading), {
          heading,
          taken: taken === "left out" ? "-" : taken,
          choices: place.into === "Cases" ? cases.headings : gathers.headings,
        });
  return {
    bytes: fillBook(empty, brought.content),
    words: broughtInWords(brought),
    headings: [...headings.values()],
  };
}
