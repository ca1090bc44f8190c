import type { ComparisonContent } from "./comparisonContent.ts";

/** A comparison to be filled by hand. */
export const emptyComparison = ({ made }: { readonly made: string }): ComparisonContent => ({
  made,
  invented: false,
  year: undefined,
  target: 0.02,
  flocks: [],
  chosen: undefined,
  books: [],
});
