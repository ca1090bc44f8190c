import { type ShareWithLimits, truePrevalence } from "../../src/core/counting/truePrevalence.ts";
import { about, defineFunction } from "../../src/definition/defineFunction.ts";
import { nothing, problem } from "../../src/definition/problemExamples.ts";
import { countFrom, share } from "../../src/reading/numbers.ts";
import { one, oneOrNone } from "../../src/reading/parameter.ts";
import { row } from "../../src/writing/result.ts";
import { sources } from "../sources.ts";
import { confidenceChoice, gatherColumns, gatherNotes } from "./gatherColumns.ts";

export const truePrevalenceFunction = defineFunction({
  name: "TRUEPREV",
  summary: "The share truly lame, when looking misses some lame sheep and calls some sound ones lame.",
  questions: [
    "correct prevalence for missed lame sheep",
    "true share lame from sensitivity and specificity",
    "how many lame sheep did we miss",
  ],
  notes: [
    ...gatherNotes,
    "Sensitivity and specificity must be those of this look by these people. Figures from elsewhere can shift the answer more than chance does.",
    "An estimate outside 0 to 1, which comes by chance when few are lame, is set to the end that it passed; so are the limits.",
    "Sensitivity and specificity count as known unless you say on how many sheep they were found; then the range is wider for it.",
  ],
  parameters: {
    ...gatherColumns,
    sensitivity: one(share, "Share of the truly lame that the look calls lame"),
    specificity: one(share, "Share of the truly sound that the look calls sound"),
    confidence: confidenceChoice,
    sensitivity_from: oneOrNone(countFrom(1), "Truly lame sheep on which the sensitivity was found"),
    specificity_from: oneOrNone(countFrom(1), "Truly sound sheep on which the specificity was found"),
  },
  result: row<ShareWithLimits>(
    ["share truly lame", "share", ({ share }) => share],
    ["low", "share", ({ low }) => low],
    ["high", "share", ({ high }) => high],
  ),
  caution: undefined,
  sources: [sources.roganGladen1978, sources.langReiczigel2014, sources.wilson1927],
  compute: ({ lame, seen, sensitivity, specificity, confidence, sensitivity_from, specificity_from }) =>
    truePrevalence(
      lame,
      seen,
      { sensitivity, specificity, sensitivityFrom: sensitivity_from, specificityFrom: specificity_from },
      confidence,
    ),
  examples: [
    {
      shows: "60 called lame of 300; the look finds 85 % of the lame and 97 % of the sound",
      call: [60, 300, 0.85, 0.97],
      gives: [[about(0.2073170732), about(0.1568986085), about(0.2669864924)]],
    },
    {
      shows: "The same over two gathers, when the look was tried on 100 lame and 300 sound sheep",
      call: [[40, null, 20], [200, null, 100], 0.85, 0.97, 0.95, 100, 300],
      gives: [[about(0.2073170732), about(0.1501156204), about(0.274216822)]],
    },
    {
      shows: "Fewer called lame than false alarms alone would give",
      call: [1, 100, 0.85, 0.97],
      gives: [[0, 0, about(0.0298612149)]],
    },
    {
      call: [60, 300, 0.5, 0.5],
      gives: problem(
        "sensitivity: 0.5 with a specificity of 0.5 tells no more than tossing a coin; the two must add up to more than 1",
      ),
    },
    {
      call: [60, 300, 85, 0.97],
      gives: problem("sensitivity: 85 is above 1; enter a share from 0 to 1, such as 0.05 or 5%"),
    },
    { call: [0, 0, 0.85, 0.97], gives: nothing("seen: no sheep were seen, so there is no share") },
  ],
});
