import { dayOf } from "../../src/cells/day.ts";
import { animalClear } from "../../src/core/dates/animalClear.ts";
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
  summary: "The day one animal may go for food, over all of its treatments.",
  questions: ["when is this ewe clear", "latest withdrawal date of an animal", "can this sheep be sold"],
  notes: [
    "The latest clear date over all treatments of the animal, and over those without a readable tag, which may be its own. Blank when none of these is recorded.",
    "A whole group treated, in a row without a tag, is such a treatment here, whatever its group. NOTCLEAR and SALECHECK can be given the groups.",
    ...treatmentNotes,
    "A record of this animal without its days is refused with its row, and so is a tag that is alike to one that is clear later. Faults in other animals' rows do not matter here.",
  ],
  parameters: { tag: one(tag, "The animal's tag"), ...treatmentColumns, counting: countingChoice },
  result: single("clear date", "date"),
  caution: cautions.withdrawal,
  sources: [sources.fimeaWithdrawal, sources.practice],
  compute: ({ tag, tags, treated, withdrawal_days, counting }, origin) =>
    animalClear(tag, { tags, treated, withdrawalDays: withdrawal_days }, counting, (index) => origin.row(index)),
  examples: [
    {
      shows: "Two treatments under two spellings of the tag: the later clear date counts",
      call: ["ZZ012345600042", ...records],
      gives: dayOf("2026-03-11"),
    },
    { shows: "An animal in no record", call: ["051", ...records], gives: "" },
    {
      shows: "A number that has lost the zero of the tag",
      call: [42, ["041", "042"], [dayOf("2026-02-10"), dayOf("2026-02-12")], [28, 28]],
      gives: problem(
        "tag: it may be 042, row 2, not clear until 13 Mar 2026; look at both tags, and enter tags as text",
      ),
    },
    {
      call: ["042", ["041", null, "042"], [dayOf("2026-02-10"), null, dayOf("2026-02-12")], [null, null, null]],
      gives: problem("withdrawal_days, row 3: a treatment without withdrawal days"),
    },
    {
      shows: "A treatment without a tag may be hers, so its date counts too",
      call: ["041", ["041", null], [dayOf("2026-02-10"), dayOf("2026-02-12")], [28, 28]],
      gives: dayOf("2026-03-13"),
    },
    {
      shows: "A date that cannot be read in another animal's row does not matter",
      call: ["041", ["041", "043"], [dayOf("2026-02-10"), "12/2"], [28, 28]],
      gives: dayOf("2026-03-11"),
    },
  ],
});
