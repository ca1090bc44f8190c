import type { ShareWithLimits } from "../../src/core/counting/truePrevalence.ts";
import { weightedPrevalence } from "../../src/core/counting/weightedPrevalence.ts";
import { about, defineFunction } from "../../src/definition/defineFunction.ts";
import { nothing, problem } from "../../src/definition/problemExamples.ts";
import { count } from "../../src/reading/numbers.ts";
import { column } from "../../src/reading/parameter.ts";
import { row } from "../../src/writing/result.ts";
import { sources } from "../sources.ts";
import { confidenceChoice, gatherColumns } from "./gatherColumns.ts";

export const weightedPrevalenceFunction = defineFunction({
  name: "WEIGHTEDPREV",
  summary:
    "The share lame in a flock kept in groups, each group weighted by its size and not by how many were looked at.",
  questions: [
    "share lame when groups were sampled unequally",
    "weight prevalence by group size",
    "flock average over ewes, lambs and rams",
  ],
  notes: [
    "A row for each group. Of every group that has sheep some must be looked at, since nothing is known of the others.",
    "The range grows narrower with the part of each group that was looked at; a group wholly looked at adds nothing to it.",
    "It supposes that the sheep looked at are a fair sample of their group.",
    "Fewer than 10 sheep looked at in all are refused, unless they are the whole flock: a range from so few misses the truth too often.",
  ],
  parameters: {
    group_size: column(count("sheep in the group"), "Sheep in each group"),
    lame: column(count("lame sheep"), "Lame sheep among those looked at in each group, the same rows"),
    seen: gatherColumns.seen,
    confidence: confidenceChoice,
  },
  result: row<ShareWithLimits>(
    ["share lame", "share", ({ share }) => share],
    ["low", "share", ({ low }) => low],
    ["high", "share", ({ high }) => high],
  ),
  caution: undefined,
  sources: [sources.cochran1977, sources.zouDonner2008, sources.kornGraubard1998, sources.wilson1927],
  compute: ({ group_size, lame, seen, confidence }) => weightedPrevalence(group_size, lame, seen, confidence),
  examples: [
    {
      shows: "Three groups, one row left blank",
      call: [
        [120, null, 60, 220],
        [6, null, 1, 4],
        [40, null, 30, 50],
      ],
      gives: [[about(0.094), about(0.0570853032), about(0.1559921613)]],
    },
    {
      shows: "Both groups wholly looked at",
      call: [
        [40, 10],
        [2, 1],
        [40, 10],
      ],
      gives: [[about(0.06), about(0.06), about(0.06)]],
    },
    {
      call: [
        [120, 60],
        [6, 0],
        [40, 0],
      ],
      gives: problem(
        "seen, row 2: no sheep of this group of 60 were seen, so nothing is known of it; look at some or leave the row out",
      ),
    },
    {
      call: [
        [120, 20],
        [6, 1],
        [40, 30],
      ],
      gives: problem("group_size, row 2: 20 is fewer than the 30 sheep seen; enter the size of the whole group"),
    },
    {
      call: [
        [20, 20, 20],
        [0, 1, 0],
        [2, 2, 2],
      ],
      gives: problem("seen: 6 sheep looked at in all: too few for a range that can be trusted; look at 10 or more"),
    },
    { call: [0, 0, 0], gives: nothing("group_size: the groups hold no sheep, so there is no share") },
  ],
});
