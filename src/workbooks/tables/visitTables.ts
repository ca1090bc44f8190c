import { lesions } from "../../core/words/lesionName.ts";
import { rules } from "../writing/rules.ts";
import { defineTable } from "./defineTable.ts";
import { lesionWords } from "./recordWords.ts";

export const visitGroups = defineTable("VisitGroups", 8, {
  group: { heading: "Group", width: 28, look: "fieldText" },
  sheep: { heading: "Sheep", width: 20, look: "fieldCount", rule: rules.sheep },
  lookedAt: { heading: "Looked at", width: 12, look: "fieldCount", rule: rules.sheep },
  lame: {
    heading: "Lame",
    width: 12,
    look: "fieldCount",
    rule: (cell) => ({
      of: { whole: ["0", `IF(${cell("lookedAt")}="",1000000,${cell("lookedAt")})`] },
      words: "Type how many were lame: a whole number, not more than were looked at.",
    }),
  },
});

export const found = defineTable("VisitFound", 6, {
  lesion: {
    heading: "Lesion",
    width: 28,
    look: "fieldText",
    rule: {
      of: { list: `"${lesions.map((lesion) => lesionWords[lesion]).join(",")}"` },
      words: "Choose a lesion from the list; what is none of them is other.",
    },
  },
  cases: { heading: "Cases", width: 20, look: "fieldCount", rule: rules.sheep },
  severe: { heading: "Severe", width: 12, look: "fieldText", rule: rules.yesNo },
  pusLetOut: { heading: "Pus let out", width: 12, look: "fieldText", rule: rules.yesNo },
});

/** Beside the medicine that is worked out animal by animal. */
export const otherMedicines = defineTable("OtherMedicines", 3, {
  medicine: { heading: "Medicine", width: 27, look: "fieldText" },
  route: { heading: "Given how", width: 22, look: "fieldText" },
  mgPerKg: { heading: "mg per kg", width: 12, look: "fieldCount", rule: rules.amount },
  mgPerMl: { heading: "mg per ml", width: 12, look: "fieldCount", rule: rules.amount },
  withdrawalDays: {
    heading: "Withdrawal days, meat",
    width: 20,
    look: "fieldCount",
    rule: { of: { whole: ["0", "365"] }, words: "Type the days, 0 to 365, without a unit." },
  },
});

export const weighed = defineTable("Weighed", 400, {
  animal: { heading: "Animal", width: 27, look: "typedText" },
  kg: {
    heading: "Weight kg",
    width: 22,
    look: "typedCount",
    rule: { of: { number: ["1", "200"] }, words: "Type the weight in kg, 1 to 200." },
  },
});

export const agreed = defineTable("Agreed", 8, {
  what: { heading: "Agreed", width: 40, look: "fieldWords" },
  who: { heading: "Who", width: 11, look: "fieldWords" },
  by: { heading: "By", width: 13, look: "fieldDate", rule: rules.day },
  done: { heading: "Done", width: 10, look: "fieldText", rule: rules.yesNo },
});
