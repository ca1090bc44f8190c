import type { WorkbookPlan } from "../writing/authorWorkbook.ts";
import type { Edition } from "../writing/edition.ts";
import { dosesSheet } from "./dosesSheet.ts";
import { pageSheet } from "./pageSheet.ts";
import { planLinesSheet } from "./planLinesSheet.ts";
import { planSheet } from "./planSheet.ts";
import { quarantineSheet } from "./quarantineSheet.ts";
import { startSheet } from "./startSheet.ts";
import type { VisitContent } from "./visitContent.ts";
import { visitInputs } from "./visitInputs.ts";

/** The Visit sheet of an adviser, from what it is to hold. */
export const visitSheet = (content: VisitContent, edition: Edition = "excel"): WorkbookPlan => ({
  edition,
  title: "Visit sheet",
  description: content.invented
    ? "One visit to an invented flock. No animal, farm or medicine in it exists."
    : "One visit to one flock: what was looked at, what was found, and what was agreed.",
  made: content.made,
  sheets: [
    startSheet(content),
    visitInputs(content),
    dosesSheet(content),
    planSheet,
    pageSheet(content),
    quarantineSheet(content),
    planLinesSheet,
  ],
});
