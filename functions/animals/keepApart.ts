import { dayOf } from "../../src/cells/day.ts";
import { type KeptApart, keepApart } from "../../src/core/animals/keepApart.ts";
import { soundnessWords } from "../../src/core/animals/soundness.ts";
import { defineFunction } from "../../src/definition/defineFunction.ts";
import { problem } from "../../src/definition/problemExamples.ts";
import { day } from "../../src/reading/days.ts";
import { wholeDays } from "../../src/reading/numbers.ts";
import { doubtColumn, gappedDoubtColumnOrNone, one, oneOr } from "../../src/reading/parameter.ts";
import { soundnessWord } from "../../src/reading/words.ts";
import { table } from "../../src/writing/result.ts";
import { sources } from "../sources.ts";
import { recordColumns } from "./caseColumns.ts";

export const keepApartFunction = defineFunction({
  name: "KEEPAPART",
  summary:
    "The sheep to keep apart at housing, turnout or weaning: those still lame, and those sound for too short a time.",
  questions: [
    "which sheep must not go in with the others",
    "keep lame sheep apart at housing",
    "who is still lame at turnout",
    "stop it spreading to other sheep",
    "isolation",
  ],
  notes: [
    "The latest record up to the event counts; later records are left out. Of two records on one day, lame stands over sound, and sold or died over both.",
    "Sound days count from the first sound record after the last lame one. An animal that was never recorded lame is not listed: it may still be lame and unseen.",
    'An animal of which a record cannot be read stands first, as "not known" with its row, if any record of it may say lame; "any animal" stands above it for a lame record without a readable tag. An animal whose tag is alike to that of one listed is listed too: see TAGCHECK.',
    'Where a row of your records is a case, with a day seen lame and a day sound again, give "lame" once as states, and the second day as sound_on.',
    `Lame is: ${soundnessWords.lame.join(", ")}. Sound is: ${soundnessWords.sound.join(", ")}. No longer in the flock, and so not listed, is: ${soundnessWords.gone.join(", ")}. Yes, no and scores are refused, since a heading may ask either question. "Sound?" and "sold?" are not sure, and so not known; "lame?" is lame.`,
  ],
  parameters: {
    event_date: one(day, "Day of housing, turnout or weaning"),
    ...recordColumns,
    states: doubtColumn(
      soundnessWord,
      'What each record says: "lame", "treated", "sound", "recovered", "sold"; the same rows, or one word for all',
      { repeats: true },
    ),
    settle_days: oneOr(wholeDays, 7, "Days an animal must have been sound"),
    sound_on: gappedDoubtColumnOrNone(day, "Day each was found sound again, the same rows; blank while still lame"),
    left_on: gappedDoubtColumnOrNone(
      day,
      "Day each left the flock (sold, died, culled), the same rows; blank while it is there",
    ),
  },
  result: table<KeptApart>(
    "none to keep apart",
    ["tag", "text", ({ tag }) => tag],
    ["why", "text", ({ why }) => why],
    ["last record", "date", ({ lastRecord }) => lastRecord],
  ),
  caution: undefined,
  sources: [sources.practice],
  compute: ({ event_date, tags, dates, states, settle_days, sound_on, left_on }, origin) =>
    keepApart(event_date, { tags, dates, states, soundOn: sound_on, leftOn: left_on }, settle_days, (index) =>
      origin.row(index),
    ),
  examples: [
    {
      shows: "Housing on 20 Mar 2026: one lame, one sound for five days, one for ten",
      call: [
        dayOf("2026-03-20"),
        ["042", "041", null, "042", "043", "043", "041"],
        [
          dayOf("2026-02-27"),
          dayOf("2026-03-12"),
          null,
          dayOf("2026-03-15"),
          dayOf("2026-02-20"),
          dayOf("2026-03-10"),
          dayOf("2026-03-22"),
        ],
        ["lame", "Still lame", null, "sound", "treated", "recovered", "sound"],
      ],
      gives: [
        ["tag", "why", "last record"],
        ["041", "lame on 12 Mar 2026", dayOf("2026-03-12")],
        ["042", "sound only since 15 Mar 2026, lame on 27 Feb 2026; settled on 22 Mar 2026", dayOf("2026-03-15")],
      ],
    },
    {
      shows: "Three days are enough",
      call: [dayOf("2026-03-20"), ["042", "042"], [dayOf("2026-02-27"), dayOf("2026-03-15")], ["lame", "sound"], 3],
      gives: [
        ["tag", "why", "last record"],
        ["none to keep apart", "", ""],
      ],
    },
    {
      shows: "Of two lame ewes one was sold before housing",
      call: [
        dayOf("2026-03-20"),
        ["042", "043", "042"],
        [dayOf("2026-02-27"), dayOf("2026-03-02"), dayOf("2026-03-15")],
        ["lame", "lame", "sold"],
      ],
      gives: [
        ["tag", "why", "last record"],
        ["043", "lame on 2 Mar 2026", dayOf("2026-03-02")],
      ],
    },
    {
      shows: "Cases, a row each: one still lame, one sound for four days, one for twelve, and one that was sold lame",
      call: [
        dayOf("2026-03-20"),
        ["041", "042", null, "043", "044"],
        [dayOf("2026-03-12"), dayOf("2026-02-27"), null, dayOf("2026-03-01"), dayOf("2026-03-02")],
        "lame",
        7,
        [null, dayOf("2026-03-16"), null, dayOf("2026-03-08"), null],
        [null, null, null, null, dayOf("2026-03-11")],
      ],
      gives: [
        ["tag", "why", "last record"],
        ["041", "lame on 12 Mar 2026", dayOf("2026-03-12")],
        ["042", "sound only since 16 Mar 2026, lame on 27 Feb 2026; settled on 23 Mar 2026", dayOf("2026-03-16")],
      ],
    },
    {
      shows: "A sound day before the lame one: the animal is not known to be sound",
      call: [
        dayOf("2026-03-20"),
        ["041", "042"],
        [dayOf("2026-03-12"), dayOf("2026-02-27")],
        "lame",
        7,
        [null, dayOf("2026-02-16")],
      ],
      gives: [
        ["tag", "why", "last record"],
        [
          "042",
          "not known: sound_on, row 2: 16 Feb 2026 is before the record of 27 Feb 2026; mend one of the two dates",
          "",
        ],
        ["041", "lame on 12 Mar 2026", dayOf("2026-03-12")],
      ],
    },
    {
      shows: "A lame record without a tag, and a tag with a letter O for a zero",
      call: [
        dayOf("2026-03-20"),
        ["042", "O42", null],
        [dayOf("2026-02-27"), dayOf("2026-03-15"), dayOf("2026-03-16")],
        ["sound", "lame", "lame"],
      ],
      gives: [
        ["tag", "why", "last record"],
        [
          "any animal",
          "not known: tags, row 3: no tag in a row that holds a record; enter the tag of the animal; it may be any animal",
          "",
        ],
        ["042", "it may be O42, which is listed: lame on 15 Mar 2026", dayOf("2026-02-27")],
        ["O42", "lame on 15 Mar 2026", dayOf("2026-03-15")],
      ],
    },
    {
      shows: "A word that says neither lame nor sound",
      call: [dayOf("2026-03-20"), ["042", "043"], [dayOf("2026-02-27"), dayOf("2026-03-15")], ["lame", "yes"]],
      gives: [
        ["tag", "why", "last record"],
        [
          "043",
          'not known: states, row 2: "yes" does not say lame or sound; use a word such as "lame", "treated", "still lame", "sound", "recovered" or "sold"',
          "",
        ],
        ["042", "lame on 27 Feb 2026", dayOf("2026-02-27")],
      ],
    },
    {
      shows: "A question mark: 042 is not known to be sound",
      call: [dayOf("2026-03-20"), ["042", "042"], [dayOf("2026-02-27"), dayOf("2026-03-10")], ["lame", "sound?"]],
      gives: [
        ["tag", "why", "last record"],
        [
          "042",
          'not known: states, row 2: "sound?" is not sure; look at the animal and enter what it is, without a question mark',
          dayOf("2026-02-27"),
        ],
      ],
    },
    {
      call: ["soon", ["042"], [dayOf("2026-02-27")], "lame"],
      gives: problem('event_date: "soon" is not a date; enter a real date, or text such as 2026-03-14'),
    },
  ],
});
