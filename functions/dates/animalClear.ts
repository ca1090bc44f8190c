import { dayOf } from "../../src/cells/day.ts";
import { animalClear } from "../../src/core/withdrawal/animalClear.ts";
import { defineFunction } from "../../src/definition/defineFunction.ts";
import { problem } from "../../src/definition/problemExamples.ts";
import { one } from "../../src/reading/parameter.ts";
import { tag } from "../../src/reading/words.ts";
import { single } from "../../src/writing/result.ts";
import { cautions } from "../cautions.ts";
import { sources } from "../sources.ts";
import { countingChoice, treatmentColumns, treatmentNotes } from "./treatmentColumns.ts";

const records = [
  ["ZZ 0 123456 00042", "999012345600043", "zz 012345600042", null],
  [dayOf("2026-02-10"), dayOf("2026-02-12"), dayOf("2026-02-20"), null],
  [28, 5, 5, null],
] as const;

export const animalClearFunction = defineFunction({
  name: "ANIMALCLEAR",
  topic: "dates",
  summary: "The day one animal may go for food, over all of its treatments.",
  questions: ["when is this ewe clear", "latest withdrawal date of an animal", "can this sheep be sold"],
  notes: [
    "The latest clear date over all treatments of the animal. Blank when no treatment of it is recorded. A tag is refused when the treatments have one that differs by zeros at the front only, since a number loses them.",
    ...treatmentNotes,
    "A record of this animal without its days is refused with its row. Faults in other animals' rows do not matter here.",
  ],
  parameters: { tag: one(tag, "The animal's tag"), ...treatmentColumns, counting: countingChoice },
  result: single("clear date", "date"),
  caution: cautions.withdrawal,
  sources: [sources.fimeaWithdrawal, sources.practice],
  compute: ({ tag, tags, treated, withdrawal_days, counting }) =>
    animalClear(tag, { tags, treated, withdrawalDays: withdrawal_days }, counting),
  examples: [
    {
      shows: "Two treatments under two spellings of the tag: the later clear date counts",
      call: ["ZZ012345600042", ...records],
      gives: dayOf("2026-03-11"),
    },
    { shows: "An animal in no record", call: ["042", ...records], gives: "" },
    {
      shows: "A number that has lost the zero of the tag",
      call: [42, ["041", "042"], [dayOf("2026-02-10"), dayOf("2026-02-12")], [28, 28]],
      gives: problem("tag: the treatments have 042 too; look at the zeros, and enter tags as text"),
    },
    {
      call: ["042", ["041", null, "042"], [dayOf("2026-02-10"), null, dayOf("2026-02-12")], [null, null, null]],
      gives: problem(
        "withdrawal_days, row 3: it is blank, and a missing period is not 0 days; enter the days from the data sheet",
      ),
    },
    {
      call: ["042", ["041", null], [dayOf("2026-02-10"), dayOf("2026-02-12")], [28, 28]],
      gives: problem("tags, row 2: it is blank, but the row holds a treatment; enter the tag of the animal"),
    },
  ],
});
