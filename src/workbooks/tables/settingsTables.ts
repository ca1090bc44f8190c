import { rules } from "../writing/rules.ts";
import type { Rule } from "../writing/sheetAuthor.ts";
import { defineTable } from "./defineTable.ts";

export const sheep: Rule = { of: { whole: ["0", "100000"] }, words: "Type a whole number of sheep." };
const amount: Rule = { ...rules.amount, words: "Type the number from the data sheet." };

export const groups = defineTable("Groups", 12, {
  group: { heading: "Group", width: 28, look: "fieldText" },
  sheepNow: { heading: "Sheep now", width: 18, look: "fieldCount", rule: sheep },
});

export const medicines = defineTable("Medicines", 10, {
  medicine: { heading: "Medicine", width: 28, look: "fieldText" },
  mgPerMl: { heading: "mg per ml", width: 18, look: "fieldCount", rule: amount },
  mgPerKg: { heading: "mg per kg", width: 15, look: "fieldCount", rule: amount },
  withdrawalDays: { heading: "Withdrawal days", width: 18, look: "fieldCount", rule: rules.days },
  antibiotic: { heading: "Antibiotic", width: 15, look: "fieldText", rule: rules.yesNo },
});

export const people = defineTable("People", 12, {
  givenBy: { heading: "Given by", width: 18, look: "fieldText" },
});

export const treatments = defineTable("Treatments", 12, {
  treatment: { heading: "Treatment", width: 22, look: "fieldText" },
});
