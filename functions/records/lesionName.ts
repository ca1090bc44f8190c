import { lesions } from "../../src/core/lesions/lesionName.ts";
import { defineFunction } from "../../src/definition/defineFunction.ts";
import { problem } from "../../src/definition/problemExamples.ts";
import { one } from "../../src/reading/parameter.ts";
import { lesion } from "../../src/reading/words.ts";
import { single } from "../../src/writing/result.ts";
import { sources } from "../sources.ts";

export const lesionNameFunction = defineFunction({
  name: "LESIONNAME",
  topic: "records",
  summary: "The standard name of a foot lesion, from the words people write.",
  questions: ["what is scald called", "clean up lesion names", "one spelling for lesions"],
  notes: [
    `The names known: ${lesions.join(", ")}.`,
    "Case, spaces and hyphens do not matter. The everyday words that count as each name are common practice; there is no published list.",
    "White line disease of sheep is shelly hoof. The white line alone is not known: it may be an abscess or a loose wall, which are treated otherwise.",
  ],
  parameters: { text: one(lesion, "The lesion as it was written down") },
  result: single("lesion", "text"),
  caution: undefined,
  sources: [sources.practice, sources.whiteLineDisease2021],
  compute: ({ text }) => text,
  examples: [
    { shows: "An everyday word", call: ["scald"], gives: "interdigital dermatitis" },
    { shows: "Capitals, spaces and hyphens", call: [" Foot-Rot "], gives: "footrot" },
    { shows: "Letters in place of the name", call: ["CODD"], gives: "contagious ovine digital dermatitis" },
    { shows: "Another name for it", call: ["White line disease"], gives: "shelly hoof" },
    {
      call: ["limping"],
      gives: problem(`text: "limping" is not a lesion known here; use one of: ${lesions.join(", ")}`),
    },
  ],
});
