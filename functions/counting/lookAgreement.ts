import { type Agreement, lookAgreement } from "../../src/core/counting/lookAgreement.ts";
import { about, defineFunction } from "../../src/definition/defineFunction.ts";
import { nothing, problem } from "../../src/definition/problemExamples.ts";
import { column } from "../../src/reading/parameter.ts";
import { text } from "../../src/reading/words.ts";
import { table } from "../../src/writing/result.ts";
import { sources } from "../sources.ts";
import { confidenceChoice } from "./gatherColumns.ts";

export const lookAgreementFunction = defineFunction({
  name: "LOOKAGREE",
  summary: "Whether two lookers agree about the same sheep: share agreed, Cohen's kappa and Gwet's AC1, with ranges.",
  questions: [
    "do two people score lameness alike",
    "kappa between observers",
    "is the change only a change of looker",
    "agreement of locomotion scores",
  ],
  notes: [
    "A row for each sheep that both looked at, with what each said of it: lame or sound, or a score. Names that differ only in capitals or spaces are one.",
    "Two lookers agree about many sheep by chance, the more so where nearly all are sound. Kappa and AC1 leave that out: 1 is full agreement, 0 is no more than chance. Kappa becomes very low where nearly all are sound, though the two hardly differ; AC1 does not. Look at both.",
    "Names are taken as different or the same: a score of 1 against 2 counts as much as 0 against 6.",
    "The ranges of kappa and AC1 are worked out with four sheep more, spread evenly over all pairs of names, so that full agreement about a few sheep is not taken for certain.",
    "A row with one of the two missing is refused.",
  ],
  parameters: {
    first: column(text("what the first looker says"), "What the first looker says of each sheep"),
    second: column(text("what the second looker says"), "What the second looker says of it, the same rows"),
    confidence: confidenceChoice,
  },
  result: table<Agreement>(
    "no sheep",
    ["measure", "text", ({ measure }) => (measure === "agreed" ? "share agreed" : measure)],
    ["value", "rate", ({ value }) => value],
    ["low", "rate", ({ low }) => low],
    ["high", "rate", ({ high }) => high],
  ),
  caution: undefined,
  sources: [sources.cohen1960, sources.fleiss1969, sources.gwet2008, sources.agrestiCoull1998],
  compute: ({ first, second, confidence }) => lookAgreement(first, second, confidence),
  examples: [
    {
      shows: "Ten sheep, about one of which the two differ; a blank row",
      call: [
        ["lame", "sound", "sound", null, "sound", "lame", "sound", "sound", "sound", "sound", "lame"],
        ["lame", "sound", "sound", null, "sound", "sound", "sound", "Sound", "sound", "sound", "lame"],
      ],
      gives: [
        ["measure", "value", "low", "high"],
        ["share agreed", 0.9, about(0.5958499732), about(0.9821237869)],
        ["kappa", about(0.7368421053), about(0.0365764975), about(0.9866793164)],
        ["AC1", about(0.84), about(0.2030683583), 1],
      ],
    },
    {
      call: [
        ["lame", "sound"],
        ["lame", null],
      ],
      gives: problem("second, row 2: it is blank, but the row holds a record; enter what the second looker says"),
    },
    {
      call: [
        ["sound", "sound"],
        ["sound", "sound"],
      ],
      gives: nothing(
        "first: both lookers give every sheep the same one name, so nothing shows whether they would agree on another",
      ),
    },
  ],
});
