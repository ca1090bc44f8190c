import type { SheetPlan, WorkbookPlan } from "../writing/authorWorkbook.ts";
import type { Edition } from "../writing/edition.ts";
import { booksSheet } from "./booksSheet.ts";
import { comparedFlocks } from "./comparedFlocks.ts";
import { type ComparisonContent, isCollated } from "./comparisonContent.ts";
import { comparisonSheet } from "./comparisonSheet.ts";
import { doneSheet } from "./doneSheet.ts";
import { figuresSheet } from "./figuresSheet.ts";
import { flocksSheet } from "./flocksSheet.ts";
import { gathersSheet } from "./gathersSheet.ts";
import { oneFlockSheet } from "./oneFlockSheet.ts";
import { picturesSheet } from "./picturesSheet.ts";
import { placedComparison, roomFor } from "./placedComparison.ts";
import { startSheet } from "./startSheet.ts";

/**
 * The Flock comparison of a consultant, from what it is to hold. Collated, it holds values and needs no functions to be
 * read.
 */
export function flockComparison(content: ComparisonContent, edition: Edition = "excel"): WorkbookPlan {
  const gathers = content.flocks.reduce((sum, flock) => sum + (flock.gathers?.length ?? 0), 0);
  const placed = placedComparison(roomFor(content), gathers);
  const compared = isCollated(content) ? comparedFlocks(content) : undefined;
  const sheets: readonly (SheetPlan | false)[] = [
    startSheet(content),
    flocksSheet(content, placed),
    !compared && gathersSheet(content, placed),
    comparisonSheet(content, placed, compared),
    content.done !== undefined && doneSheet(content, placed),
    picturesSheet(placed),
    oneFlockSheet(content, placed, compared),
    compared !== undefined && booksSheet(content),
    figuresSheet(content, placed, compared),
  ];
  return {
    title: "Flock comparison",
    description: content.invented
      ? "Invented flocks side by side. No farm, animal or medicine in them exists."
      : "Foot health of flocks side by side.",
    made: content.made,
    edition,
    sheets: sheets.filter((sheet) => sheet !== false),
  };
}
