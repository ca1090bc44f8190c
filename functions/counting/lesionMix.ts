import type { CategoryShare } from "../../src/core/counting/categoryMix.ts";
import { lesionMix } from "../../src/core/counting/lesionMix.ts";
import { about, defineFunction } from "../../src/definition/defineFunction.ts";
import { nothing } from "../../src/definition/problemExamples.ts";
import { column, leavingOut } from "../../src/reading/parameter.ts";
import { nameText } from "../../src/reading/words.ts";
import { table } from "../../src/writing/result.ts";
import { leftOutNote } from "../leftOutNote.ts";
import { sources } from "../sources.ts";
import { confidenceChoice } from "./gatherColumns.ts";

export const lesionMixFunction = defineFunction({
  name: "LESIONMIX",
  summary: "How often each foot lesion occurs among the cases, most frequent first.",
  questions: ["which lesion is most common", "how much of it is footrot", "share of scald and footrot"],
  notes: [
    'Everyday words are counted under their standard name, as LESIONNAME gives it. Words it does not know are counted under "not recognised", never dropped.',
    'One written down with doubt ("scald?") has a line of its own, such as "interdigital dermatitis, not sure": it is counted, but never as sure. Each case counts once: two lesions together as the graver, a slip of the hand as what LESIONNAME reads it as.',
    "Blank cells are no cases.",
    leftOutNote,
  ],
  parameters: {
    lesions: leavingOut(column(nameText("the name of a lesion"), "The lesion of each case")),
    confidence: confidenceChoice,
  },
  result: table<CategoryShare>(
    "no cases",
    ["lesion", "text", ({ name }) => name],
    ["cases", "count", ({ cases }) => cases],
    ["share of cases", "share", ({ share }) => share],
    ["low", "share", ({ low }) => low],
    ["high", "share", ({ high }) => high],
  ),
  caution: undefined,
  sources: [sources.wilson1927, sources.practice],
  compute: ({ lesions, confidence }) => lesionMix(lesions, confidence),
  examples: [
    {
      shows: "Five cases in mixed spelling, one row blank",
      call: [["scald", "Foot rot", null, " footrot", "limping", "FOOTROT"]],
      gives: [
        ["lesion", "cases", "share of cases", "low", "high"],
        ["footrot", 3, 0.6, about(0.2307242813), about(0.8823792258)],
        ["interdigital dermatitis", 1, 0.2, about(0.0362241086), about(0.6244653702)],
        ["not recognised", 1, 0.2, about(0.0362241086), about(0.6244653702)],
      ],
    },
    {
      shows: "One in doubt, and two lesions together",
      call: [["footrot", "footrot?", "scald + footrot"]],
      gives: [
        ["lesion", "cases", "share of cases", "low", "high"],
        ["footrot", 2, about(2 / 3), about(0.2076596008), about(0.9385080553)],
        ["footrot, not sure", 1, about(1 / 3), about(0.0614919447), about(0.7923403992)],
      ],
    },
    { call: [[null, null]], gives: nothing("lesions: there is no case to count") },
  ],
});
