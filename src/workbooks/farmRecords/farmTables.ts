import { defineTable, type RecordOf } from "../tables/defineTable.ts";

/** The records of the sample as a farm of its own would lay them out. */
export const farmCases = defineTable("Cases", 0, {
  seen: { heading: "Seen lame", width: 12, look: "date" },
  treated: { heading: "Treated", width: 12, look: "date" },
  tag: { heading: "Tag", width: 23, look: "tag" },
  group: { heading: "Group", width: 22, look: "plain" },
  foot: { heading: "Foot", width: 6, look: "centred" },
  lesion: { heading: "Lesion", width: 18, look: "plain" },
  score: { heading: "Score", width: 7, look: "centred" },
  treatment: { heading: "Treatment", width: 19, look: "plain" },
  medicine: { heading: "Medicine", width: 12, look: "plain" },
  ml: { heading: "Dose ml", width: 8, look: "centred" },
  mgPerMl: { heading: "Strength mg/ml", width: 10, look: "centred" },
  withdrawalDays: { heading: "Withdrawal days", width: 11, look: "centred" },
  lookedAgain: { heading: "Looked again", width: 12, look: "date" },
  soundOn: { heading: "Sound on", width: 12, look: "date" },
  kg: { heading: "Weight kg", width: 9, look: "centred" },
});

export const farmGathers = defineTable("Gathers", 0, {
  date: { heading: "Date", width: 13, look: "date" },
  group: { heading: "Group", width: 24, look: "plain" },
  lame: { heading: "Lame", width: 9, look: "plain" },
  seen: { heading: "Seen", width: 9, look: "plain" },
});

/** Records as a person typed them; one without anything is a row left blank. */
export type TypedCase = RecordOf<typeof farmCases>;
export type TypedGather = RecordOf<typeof farmGathers>;
