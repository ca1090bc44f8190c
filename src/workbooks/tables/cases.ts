import { mostMl } from "../../core/treatment/mostMl.ts";
import { rules } from "../writing/rules.ts";
import { defineTable } from "./defineTable.ts";
import { groupListed, listed, pastDay, usuallyListed } from "./recordRules.ts";

/** One row for each treatment of each lame animal. RECORDCHECK knows the columns by their headings. */
export const cases = defineTable("Cases", 5000, {
  seen: { heading: "Seen lame", width: 12, look: "typedDate", rule: pastDay("she was seen lame") },
  treated: { heading: "Treated", width: 12, look: "typedDate", rule: pastDay("of the last dose") },
  tag: { heading: "Tag", width: 19, look: "typedText" },
  group: { heading: "Group", width: 20, look: "typed", rule: groupListed },
  animals: {
    heading: "Animals",
    width: 9,
    look: "typedCount",
    rule: {
      of: { whole: ["1", "100000"] },
      words: "Type how many animals of the group were treated.",
      hint: "Only when a whole group was treated at once: how many. The tag then stays blank, and the group is typed.",
    },
  },
  // Several feet, two lesions or one in doubt stand in no list, and the functions read them.
  foot: {
    heading: "Foot",
    width: 7,
    look: "typedCount",
    rule: {
      of: { list: "foot_list" },
      words: "The foot: LF, RF, LH, RH or all; several as LF, RH. Use it all the same?",
      lenient: true,
    },
  },
  lesion: {
    heading: "Lesion",
    width: 19,
    look: "typed",
    rule: {
      of: { list: "lesion_list" },
      words:
        "Not in the list; what is none of them is other. Two as scald + footrot, or one not sure as scald?, will do. Use it all the same?",
      lenient: true,
    },
  },
  score: {
    heading: "Score",
    width: 8,
    look: "typedCount",
    rule: {
      of: { whole: ["0", "6"] },
      words: "Type the score, 0 to 6.",
      hint: "The worst of a day stand first on the list To treat, and before them those without a score.",
    },
  },
  treatment: {
    heading: "Treatment",
    width: 18,
    look: "typed",
    rule: usuallyListed("treatment_list", "This treatment"),
  },
  medicine: {
    heading: "Medicine",
    width: 14,
    look: "typed",
    rule: listed(
      "medicine_list",
      "Type this medicine on the sheet Settings first, with its numbers from the data sheet.",
    ),
  },
  ml: {
    heading: "Dose ml",
    width: 8,
    look: "typedCount",
    rule: { of: { number: ["0.05", `${mostMl}`] }, words: `Type the ml given, 0.05 to ${mostMl}.` },
  },
  withdrawalDays: {
    heading: "Withdrawal days",
    width: 12,
    look: "typedCount",
    rule: {
      of: { whole: ["0", "365"] },
      words: "Type the days, 0 to 365, without a unit.",
      hint: "From the data sheet or the vet. For meat; milk has days of its own. 0 only when that is written there, or when no medicine was given; a blank is never read as 0.",
    },
  },
  givenBy: { heading: "Given by", width: 12, look: "typed", rule: usuallyListed("given_by_list", "This name") },
  batch: { heading: "Batch", width: 10, look: "typedText" },
  recheckDue: {
    heading: "Recheck due",
    width: 12,
    look: "typedDate",
    rule: { ...rules.day, hint: "Only if it is another day than usual (Settings)." },
  },
  lookedAgain: { heading: "Looked again", width: 12, look: "typedDate", rule: pastDay("she was looked at again") },
  soundOn: {
    heading: "Sound on",
    width: 12,
    look: "typedDate",
    rule: { ...pastDay("she was found sound"), hint: "In each row of the case, when she was treated more than once." },
  },
  leftFlock: {
    heading: "Left flock",
    width: 12,
    look: "typedDate",
    rule: {
      ...pastDay("she was sold or culled, or died"),
      hint: "When she was sold or culled, or died: in each row of a case that was still open.",
    },
  },
  note: { heading: "Note", width: 18, look: "typed" },
});
