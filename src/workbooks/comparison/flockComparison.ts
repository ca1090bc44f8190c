import type { WorkbookPlan } from "../writing/authorWorkbook.ts";
import { booksSheet } from "./booksSheet.ts";
import type { ComparisonContent } from "./comparisonContent.ts";
import { comparisonSheet } from "./comparisonSheet.ts";
import { figuresSheet } from "./figuresSheet.ts";
import { flocksSheet } from "./flocksSheet.ts";
import { oneFlockSheet } from "./oneFlockSheet.ts";
import { picturesSheet } from "./picturesSheet.ts";
import { startSheet } from "./startSheet.ts";

/** The Flock comparison of a consultant, from what it is to hold. */
export const flockComparison = (content: ComparisonContent): WorkbookPlan => ({
  title: "Flock comparison",
  description: content.invented
    ? "Invented flocks side by side. No farm, animal or medicine in them exists."
    : "Foot health of flocks side by side.",
  made: content.made,
  sheets: [
    startSheet(content),
    flocksSheet(content),
    comparisonSheet(content),
    picturesSheet(content),
    oneFlockSheet(content),
    booksSheet(content),
    figuresSheet(content),
  ],
});
