import { gravity } from "../../src/core/words/gravity.ts";
import { lesions } from "../../src/core/words/lesionName.ts";
import { showLesion } from "../../src/core/words/showLesion.ts";
import { defineFunction } from "../../src/definition/defineFunction.ts";
import { problem } from "../../src/definition/problemExamples.ts";
import { one } from "../../src/reading/parameter.ts";
import { lesion } from "../../src/reading/words.ts";
import { single } from "../../src/writing/result.ts";
import { sources } from "../sources.ts";

export const lesionNameFunction = defineFunction({
  name: "LESIONNAME",
  summary: "The standard name of a foot lesion, from the words people write.",
  questions: ["what is scald called", "clean up lesion names", "one spelling for lesions", "what does WLA mean"],
  notes: [
    `The names known: ${lesions.join(", ")}.`,
    "Case, spaces and hyphens do not matter, and a plural will do. The everyday words that count as each name are common practice; there is no published list.",
    'A question mark, or a word such as "maybe", stays: the answer then ends in "not sure". A word of five letters or more with one slip of the hand is named with what it was read as, if one lesion alone is near it.',
    `Two lesions together are named by the graver, with the other in brackets; with or or a slash between them neither is sure. From the gravest down: ${gravity.join(", ")}. This order is common practice, no source.`,
    "LESIONMIX counts such words as they are: what is not sure in a line of its own, two together once, as the graver.",
    "White line disease of sheep is shelly hoof. The white line alone is not known: it may be an abscess or a loose wall, which are treated otherwise. A foot abscess may be at the toe or at the heel, where it is in the joint: say which. Digital dermatitis of a sheep is taken for the contagious ovine one.",
  ],
  parameters: { text: one(lesion, "The lesion as it was written down") },
  result: single("lesion", "text"),
  caution: undefined,
  sources: [sources.practice, sources.whiteLineDisease2021, sources.west1983],
  compute: ({ text }) => showLesion(text),
  examples: [
    { shows: "An everyday word", call: ["scald"], gives: "interdigital dermatitis" },
    { shows: "Capitals, spaces and hyphens", call: [" Foot-Rot "], gives: "footrot" },
    { shows: "Letters in place of the name", call: ["CODD"], gives: "contagious ovine digital dermatitis" },
    { shows: "Another name for it", call: ["White line disease"], gives: "shelly hoof" },
    { shows: "A question mark stays", call: ["scald?"], gives: "interdigital dermatitis, not sure" },
    { shows: "A slip of the hand", call: ["abcess"], gives: 'white line abscess (read as "abscess")' },
    {
      shows: "Two together",
      call: ["scald + footrot"],
      gives: "footrot (the graver; also interdigital dermatitis)",
    },
    { shows: "Looked at, and nothing there", call: ["NAD"], gives: "no lesion found" },
    {
      call: ["foot abscess"],
      gives: problem(
        'text: "foot abscess" may be a toe abscess (under the white line) or a heel abscess (in the joint); enter toe abscess or heel abscess',
      ),
    },
    {
      call: ["limping"],
      gives: problem(`text: "limping" is not a lesion known here; use one of: ${lesions.join(", ")}`),
    },
  ],
});
