/** The sheets, in the order of the work. */
export const sheetNames = {
  start: "Start",
  settings: "Settings",
  gathers: "Gathers",
  cases: "Cases",
  today: "Today",
  sale: "May they go",
  apart: "Keep apart",
  picture: "Picture",
  medicine: "Medicine use",
  problems: "Problems",
  gatherForm: "Gather form",
  caseForm: "Case form",
  asOf: "As of",
} as const;

/** Stands on each sheet that says who may go for food, since it may be printed by itself. */
export const holdInDoubt = "The days come from data sheet or vet; in doubt hold the animal (see Start).";

/** The row of the headings on the sheets of records, counted from 0; the records follow. */
export const headingRow = 3;
export const firstRecord = headingRow + 1;
