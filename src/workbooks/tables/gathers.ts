import { defineTable } from "./defineTable.ts";
import { groupListed, pastDay } from "./recordRules.ts";

/** One row for each group at each gather. */
export const gathers = defineTable("Gathers", 1000, {
  date: { heading: "Date", width: 14, look: "typedDate", rule: pastDay("of the gather") },
  group: { heading: "Group", width: 24, look: "typed", rule: groupListed },
  lookedAt: {
    heading: "Looked at",
    width: 11,
    look: "typedCount",
    rule: { of: { whole: ["0", "100000"] }, words: "Type how many sheep were looked at, as a whole number." },
  },
  lame: {
    heading: "Lame",
    width: 9,
    look: "typedCount",
    rule: (cell) => ({
      of: { whole: ["0", `IF(${cell("lookedAt")}="",100000,${cell("lookedAt")})`] },
      words: "Type how many of them were lame: a whole number, not more than were looked at.",
    }),
  },
  note: { heading: "Note", width: 24, look: "typed" },
});
