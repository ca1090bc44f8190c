import { dayOf } from "../../src/cells/day.ts";
import { type NotSound, notSound } from "../../src/core/animals/notSound.ts";
import { defineFunction } from "../../src/definition/defineFunction.ts";
import { problem } from "../../src/definition/problemExamples.ts";
import { day } from "../../src/reading/days.ts";
import { countFrom } from "../../src/reading/numbers.ts";
import { gappedDoubtColumn, one, oneOr, oneOrNone } from "../../src/reading/parameter.ts";
import { nameText, tag } from "../../src/reading/words.ts";
import { table } from "../../src/writing/result.ts";
import { cautions } from "../cautions.ts";
import { sources } from "../sources.ts";

const headings = ["tag", "treatments", "first", "last", "lesion", "medicine"] as const;

export const notSoundFunction = defineFunction({
  name: "NOTSOUND",
  summary: "The animals treated again and not sound, those with one lesion and medicine together.",
  questions: [
    "which sheep do not get better after treatment",
    "treatment failures by lesion and medicine",
    "treated twice and still lame",
  ],
  notes: [
    "Treatments are counted by days: two medicines on one day are one treatment. The most frequent lesion and medicine stand first.",
    "An animal found sound, or gone, on a day is settled for its treatments up to that day, in whichever of its rows the day stands. A blank is never a sound animal. What is dated after as_of does not count yet.",
    'Lesions are named as LESIONNAME names them. What changed from one treatment to the next is written as "medicine A, then medicine B".',
    'An animal with a row that cannot be read stands first with the row to mend, where it may have enough treatments; "any animal" stands above it for treatments without a readable tag. So does one that has enough only together with another whose tag is alike: see TAGCHECK.',
    "It says who did not get sound, and not why: a wrong finding, a dose too small or too late and a medicine that does not work look alike here. Ask your vet.",
  ],
  parameters: {
    as_of: one(day, "The day to say it for, usually TODAY()"),
    tags: gappedDoubtColumn(tag, "Tags in the records"),
    treated: gappedDoubtColumn(day, "Day of each treatment, the same rows"),
    lesions: gappedDoubtColumn(nameText("the name of a lesion"), "The lesion treated, the same rows"),
    medicines: gappedDoubtColumn(nameText("the name of a medicine"), "The medicine given, the same rows"),
    sound_on: gappedDoubtColumn(day, "Day the animal was found sound, blank while it is not; the same rows"),
    left_on: gappedDoubtColumn(day, "Day the animal left the flock, blank while it is there; the same rows"),
    at_least: oneOr(countFrom(1, "treatments"), 2, "Fewest days of treatment to be listed"),
    from: oneOrNone(day, "First day from which treatments count"),
  },
  result: table<NotSound>(
    "none treated so often and not sound",
    ["tag", "text", (line) => line.tag],
    ["treatments", "count", (line) => line.treatments],
    ["first", "date", (line) => line.first],
    ["last", "date", (line) => line.last],
    ["lesion", "text", (line) => line.lesion],
    ["medicine", "text", (line) => line.medicine],
  ),
  caution: cautions.notSound,
  sources: [sources.practice],
  compute: ({ as_of, tags, treated, lesions, medicines, sound_on, left_on, at_least, from }, origin) =>
    notSound(
      as_of,
      { tags, treated, lesions, medicines, soundOn: sound_on, leftOn: left_on },
      { atLeast: at_least, from },
      (index) => origin.row(index),
    ),
  examples: [
    {
      shows: "Two tags that may be one animal were treated twice together",
      call: [
        dayOf("2026-03-31"),
        ["062", "62"],
        [dayOf("2026-03-02"), dayOf("2026-03-16")],
        ["scald", "scald"],
        ["medicine A", "medicine A"],
        [null, null],
        [null, null],
      ],
      gives: [
        [...headings],
        ["62", "not known", "", "", "it may be 062: 2 treatments together; look at both tags", ""],
      ],
    },
    {
      shows: "041 was found sound after its last treatment, 042 and 044 were not, and 043 was treated once",
      call: [
        dayOf("2026-03-31"),
        ["041", "041", "042", "042", null, "043", "044", "044", "044"],
        [
          dayOf("2026-03-02"),
          dayOf("2026-03-09"),
          dayOf("2026-03-03"),
          dayOf("2026-03-10"),
          null,
          dayOf("2026-03-05"),
          dayOf("2026-03-06"),
          dayOf("2026-03-16"),
          dayOf("2026-03-26"),
        ],
        ["footrot", "footrot", "scald", "foot rot", null, "scald", "CODD", "CODD", "CODD"],
        ["medicine A", "medicine A", null, "medicine A", null, null, "medicine B", "medicine B", "medicine B"],
        [null, dayOf("2026-03-16"), null, null, null, null, null, null, null],
        [null, null, null, null, null, null, null, null, null],
      ],
      gives: [
        [...headings],
        [
          "042",
          2,
          dayOf("2026-03-03"),
          dayOf("2026-03-10"),
          "interdigital dermatitis, then footrot",
          "no medicine recorded, then medicine A",
        ],
        ["044", 3, dayOf("2026-03-06"), dayOf("2026-03-26"), "contagious ovine digital dermatitis", "medicine B"],
      ],
    },
    {
      shows: "A day that cannot be read may be a second treatment; a treatment without a tag may be anybody's",
      call: [
        dayOf("2026-03-31"),
        ["041", "041", null],
        [dayOf("2026-03-02"), "9/3", dayOf("2026-03-09")],
        ["footrot", "footrot", "footrot"],
        ["medicine A", "medicine A", "medicine A"],
        [null, null, null],
        [null, null, null],
      ],
      gives: [
        [...headings],
        [
          "any animal",
          "not known",
          "",
          "",
          "tags, row 3: no tag in a row that holds a record; enter the tag of the animal",
          "",
        ],
        [
          "041",
          "not known",
          "",
          "",
          'treated, row 2: "9/3" is not a date; enter a real date, or text such as 2026-03-14',
          "",
        ],
      ],
    },
    {
      shows: "None",
      call: [dayOf("2026-03-31"), ["041"], [dayOf("2026-03-02")], ["footrot"], ["medicine A"], [null], [null]],
      gives: [[...headings], ["none treated so often and not sound", "", "", "", "", ""]],
    },
    {
      call: [dayOf("2026-03-31"), ["041"], [dayOf("2026-03-02")], ["footrot"], ["medicine A"], [null], [null], 0],
      gives: problem("at_least: 0 is below 1; enter a whole number of treatments, 1 or more"),
    },
  ],
});
