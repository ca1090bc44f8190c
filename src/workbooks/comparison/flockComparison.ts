import type { WorkbookPlan } from "../writing/authorWorkbook.ts";
import { booksSheet } from "./booksSheet.ts";
import type { ComparisonContent } from "./comparisonContent.ts";
import { comparisonSheet } from "./comparisonSheet.ts";
import { figuresSheet } from "./figuresSheet.ts";
import { flocksSheet } from "./flocksSheet.ts";
import { oneFlockSheet } from "./oneFlockSheet.ts";
import { picturesSheet } from "./picturesSheet.ts";
import { placedComparison, roomFor } from "./placedComparison.ts";
import { startSheet } from "./startSheet.ts";

/** The Flock comparison of a consultant, from what it is to hold. */
export function flockComparison(content: ComparisonContent): WorkbookPlan {
  const placed = placedComparison(roomFor(content.flocks.length));
  return {
    title: "Flock comparison",
    description: content.invented
      ? "Invented flocks side by side. No farm, animal or medicine in them exists."
      : "Foot health of flocks side by side.",
    made: content.made,
    sheets: [
      startSheet(content),
      flocksSheet(content, placed),
      comparisonSheet(content, placed),
      picturesSheet(placed),
      oneFlockSheet(content, placed),
      booksSheet(content),
      figuresSheet(content, placed),
    ],
  };
}
