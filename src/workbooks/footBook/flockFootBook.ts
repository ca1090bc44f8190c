import type { WorkbookPlan } from "../writing/authorWorkbook.ts";
import type { Edition } from "../writing/edition.ts";
import { apartSheet } from "./apartSheet.ts";
import { asOfSheet } from "./asOfSheet.ts";
import type { BookContent } from "./bookContent.ts";
import { casesSheet } from "./casesSheet.ts";
import { caseForm, gatherForm } from "./formSheets.ts";
import { gathersSheet } from "./gathersSheet.ts";
import { medicineSheet } from "./medicineSheet.ts";
import { pictureSheet } from "./pictureSheet.ts";
import { problemsSheet } from "./problemsSheet.ts";
import { saleSheet } from "./saleSheet.ts";
import { settingsSheet } from "./settingsSheet.ts";
import { startSheet } from "./startSheet.ts";
import { todaySheet } from "./todaySheet.ts";

/** The Flock foot book of a farm office, from what it is to hold. */
export const flockFootBook = (content: BookContent, edition: Edition = "excel"): WorkbookPlan => ({
  edition,
  title: "Flock foot book",
  description: content.invented
    ? "Sheep foot health of an invented flock. No animal, farm or medicine in it exists."
    : "Sheep foot health: gathers, cases, and what follows from them.",
  made: content.made,
  sheets: [
    startSheet(content),
    settingsSheet(content),
    gathersSheet(content),
    casesSheet(content),
    todaySheet,
    saleSheet(content),
    apartSheet(content),
    pictureSheet,
    medicineSheet,
    problemsSheet,
    gatherForm,
    caseForm,
    asOfSheet,
  ],
});
