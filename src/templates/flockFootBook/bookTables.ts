import type { Lesion } from "../../core/lesions/lesionName.ts";

/** The sheets, in the order of the work. */
export const sheetNames = {
  start: "Start",
  settings: "Settings",
  gathers: "Gathers",
  cases: "Cases",
  today: "Today",
  sale: "Sale check",
  apart: "Keep apart",
  picture: "Picture",
  medicine: "Medicine use",
  problems: "Problems",
} as const;

/** Stands on each sheet that says who may go for food, since it may be printed by itself. */
export const holdInDoubt = "The days come from data sheet or vet; in doubt hold the animal (see Start).";

/** Headings of the table Gathers. */
export const gatherHeadings = ["Date", "Group", "Looked at", "Lame", "Note"] as const;

/** Headings of the table Cases; RECORDCHECK knows the columns by these words. */
export const caseHeadings = [
  "Seen lame",
  "Treated",
  "Tag",
  "Group",
  "Foot",
  "Lesion",
  "Score",
  "Treatment",
  "Medicine",
  "Dose ml",
  "Withdrawal days",
  "Given by",
  "Batch",
  "Recheck due",
  "Looked again",
  "Sound on",
  "Left flock",
  "Note",
] as const;

/** Headings of the table Medicines in the settings. */
export const medicineHeadings = ["Medicine", "mg per ml", "mg per kg", "Withdrawal days", "Antibiotic"] as const;

/** Headings of the table Groups in the settings. */
export const groupHeadings = ["Group", "Sheep now"] as const;

/** The row of the headings on the sheets of records, counted from 0; the records follow. */
export const headingRow = 3;
export const firstRecord = headingRow + 1;

/** How many records each table has room for. Rows left blank cost nothing. */
export const room = { gathers: 1000, cases: 5000, sale: 300, groups: 12, medicines: 10 } as const;

/** What the list of lesions offers: the words used in the pen, each of which LESIONNAME knows. */
export const lesionWords: Readonly<Record<Lesion, string>> = {
  footrot: "footrot",
  "interdigital dermatitis": "scald",
  "contagious ovine digital dermatitis": "CODD",
  "white line abscess": "white line abscess",
  "shelly hoof": "shelly hoof",
  "toe granuloma": "toe granuloma",
  "joint infection": "joint infection",
  "foreign body": "foreign body",
  "overgrown hoof": "overgrown hoof",
  "orf or strawberry footrot": "orf",
  other: "other",
  "no lesion found": "no lesion found",
};

export const feetWords = ["LF", "RF", "LH", "RH", "all"] as const;

export const treatmentWords = [
  "injection",
  "spray",
  "injection and spray",
  "footbath",
  "pus let out",
  "pocket cleared",
  "taken out",
  "vet asked",
  "none",
] as const;
