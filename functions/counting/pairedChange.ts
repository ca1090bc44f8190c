import { pairedChange } from "../../src/core/counting/pairedChange.ts";
import type { PrevalenceChange } from "../../src/core/counting/prevalenceChange.ts";
import { about, defineFunction } from "../../src/definition/defineFunction.ts";
import { problem } from "../../src/definition/problemExamples.ts";
import { count, countFrom } from "../../src/reading/numbers.ts";
import { one } from "../../src/reading/parameter.ts";
import { row } from "../../src/writing/result.ts";
import { sources } from "../sources.ts";
import { confidenceChoice } from "./gatherColumns.ts";

export const pairedChangeFunction = defineFunction({
  name: "PAIREDCHANGE",
  summary:
    "How much the share lame changed among the same sheep looked at twice, with its range and how likely chance does as much.",
  questions: ["same sheep before and after", "did the same ewes get better", "animals followed one by one"],
  notes: [
    "For sheep known one by one at both looks. Count those that were sound and became lame, those that were lame and became sound, and all that were looked at both times.",
    "The change is the share at the second look less the share at the first: below 0 is better. A range that holds 0 has not shown a change.",
    "p is how often a difference at least this large, either way, comes when a sheep is as likely to become lame as to become sound.",
    "Where the sheep of the two looks are not known one by one use PREVCHANGE, whose range is too wide when lame sheep stay lame.",
  ],
  parameters: {
    became_lame: one(count("sheep that became lame"), "Sheep that were sound at the first look and lame at the second"),
    became_sound: one(
      count("sheep that became sound"),
      "Sheep that were lame at the first look and sound at the second",
    ),
    seen: one(countFrom(1), "All sheep looked at both times"),
    confidence: confidenceChoice,
  },
  result: row<PrevalenceChange>(
    ["change", "share", ({ change }) => change],
    ["low", "share", ({ low }) => low],
    ["high", "share", ({ high }) => high],
    ["p", "p value", ({ p }) => p],
  ),
  caution: undefined,
  sources: [sources.tango1998, sources.mcNemar1947],
  compute: ({ became_lame, became_sound, seen, confidence }) =>
    pairedChange({ becameLame: became_lame, becameSound: became_sound, seen }, confidence),
  examples: [
    {
      shows: "Of 200 sheep 10 became sound and none became lame",
      call: [0, 10, 200],
      gives: [[-0.05, about(-0.0895781481), about(-0.0273826456), 0.001953125]],
    },
    {
      shows: "None changed: the range still has a width",
      call: [0, 0, 30],
      gives: [[0, about(-0.1135133932), about(0.1135133932), 1]],
    },
    {
      call: [3, 4, 6],
      gives: problem("seen: 6 is fewer than the 7 that became lame or sound; enter all sheep looked at both times"),
    },
    {
      call: [3, "some", 60],
      gives: problem(
        'became_sound: "some" is not a number; enter a whole number of sheep that became sound, 0 or more',
      ),
    },
  ],
});
