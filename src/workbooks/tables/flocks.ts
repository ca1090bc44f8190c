import { rules } from "../writing/rules.ts";
import type { Rule } from "../writing/sheetAuthor.ts";
import { defineTable } from "./defineTable.ts";

const count = (heading: string, width: number) => ({ heading, width, look: "fieldCount", rule: rules.sheep }) as const;
const ofFlocks: Rule = { of: { list: "flock_list" }, words: "Choose a flock that stands on the sheet Flocks." };
const amount: Rule = { of: { number: ["0", "1000000000"] }, words: "Type the mg of active substance, 0 or more." };

/** One flock over one year, a row each; there is as much room as `roomFor` says. */
export const flocks = defineTable("Flocks", 0, {
  flock: { heading: "Flock", width: 28, look: "fieldText" },
  lookedAt: count("Looked at", 12),
  lame: count("Lame", 10),
  lookedAtBefore: count("Looked at, year before", 13),
  lameBefore: count("Lame, year before", 12),
  cases: count("Cases", 10),
  antibioticMg: { heading: "Antibiotics, mg", width: 13, look: "fieldCount", rule: amount },
  breedingSheep: count("Breeding sheep", 12),
  slaughterLambs: count("Lambs sold", 10),
  target: { heading: "Own target", width: 10, look: "fieldPercent", rule: rules.innerShare },
  note: { heading: "Note", width: 34, look: "fieldText" },
});

/** What was counted in a flock on one day, a row each, for consultants who have more than totals. */
export const flockGathers = defineTable("FlockGathers", 0, {
  flock: { heading: "Flock", width: 28, look: "fieldText", rule: ofFlocks },
  date: { heading: "Date", width: 14, look: "fieldDate", rule: rules.day },
  lookedAt: count("Looked at", 12),
  lame: count("Lame", 10),
});

/** What became of each file, for a comparison that was collated. */
export const books = defineTable("Books", 0, {
  file: { heading: "File", width: 36, look: "words" },
  flock: { heading: "Flock", width: 26, look: "words" },
  used: { heading: "Used", width: 8, look: "wordsCentre" },
  records: { heading: "Records", width: 10, look: "wordsCentre" },
  toMend: { heading: "To mend", width: 10, look: "wordsCentre" },
  words: { heading: "What to know", width: 84, look: "words" },
});
