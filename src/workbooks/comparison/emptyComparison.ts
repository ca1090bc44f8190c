import { usualTarget } from "../usualTarget.ts";
import type { ComparisonContent } from "./comparisonContent.ts";

/** A comparison to be filled by hand. */
export const emptyComparison = ({ made }: { readonly made: string }): ComparisonContent => ({
  made,
  invented: false,
  year: undefined,
  target: usualTarget,
  flocks: [],
  chosen: undefined,
  books: [],
});
