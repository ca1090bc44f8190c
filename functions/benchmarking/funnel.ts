import { type FunnelFlock, funnel } from "../../src/core/benchmarking/funnel.ts";
import { about, defineFunction } from "../../src/definition/defineFunction.ts";
import { nothing, problem } from "../../src/definition/problemExamples.ts";
import { innerShare } from "../../src/reading/numbers.ts";
import { oneOr, oneOrNone } from "../../src/reading/parameter.ts";
import { yesNo } from "../../src/reading/words.ts";
import { table } from "../../src/writing/result.ts";
import { sources } from "../sources.ts";
import { flockColumns, flockNotes } from "./flockColumns.ts";

export const funnelFunction = defineFunction({
  name: "FUNNEL",
  summary:
    "Which flocks stand out by more than chance: each with the limits for a flock of its size, to chart as a funnel.",
  questions: ["which flocks are out of line", "funnel plot of flocks", "compare flocks of unlike size fairly"],
  notes: [
    ...flockNotes,
    "Chart the share and the four limits against the sheep seen to get the funnel. The smaller the flock, the wider it is. A low limit below 0 is written as 0.",
    "The limits are drawn smooth between whole numbers of sheep. The word is exact: it says above or below only where so many lame, or so few, come less often by chance than the limit allows. In a small flock a share can so lie beyond the line and still be within the limits.",
    "Without a target each flock is set against the share of all flocks together, of which it is a part; then there must be two flocks or more.",
    "The limits hold chance only. Flocks differ in fields, breeds and weather too, so with large flocks many fall outside; FLOCKSPREAD says how much they differ.",
    "flocks_differ TRUE widens limits and words by how much the flocks differ among themselves beyond chance (Spiegelhalter 2005). Then few stand out, and those that do stand out of flocks that differ. Few flocks hardly show how much they differ, and the limits are the wider for it: give ten flocks or more.",
    "Of 100 flocks that differ by chance alone, at most about 5 are called outside the 95 % limits and hardly one outside the 99.8 % limits.",
  ],
  parameters: {
    ...flockColumns,
    target: oneOrNone(innerShare, "The share expected; left out, that of all flocks together"),
    flocks_differ: oneOr(yesNo, false, "TRUE widens the limits by how much the flocks differ among themselves"),
  },
  result: table<FunnelFlock>(
    "no flocks",
    ["flock", "text", ({ flock }) => flock],
    ["seen", "count", ({ seen }) => seen],
    ["share", "share", ({ share }) => share],
    ["low 95 %", "share", ({ low95 }) => low95],
    ["high 95 %", "share", ({ high95 }) => high95],
    ["low 99.8 %", "share", ({ low998 }) => low998],
    ["high 99.8 %", "share", ({ high998 }) => high998],
    ["word", "text", ({ word }) => word],
  ),
  caution: undefined,
  sources: [sources.spiegelhalter2005],
  compute: ({ flocks, lame, seen, target, flocks_differ }) => funnel(flocks, lame, seen, target, flocks_differ),
  examples: [
    {
      shows: "Invented flocks against 5 %; one row left blank, one flock without a look",
      call: [["Hill", "Low", null, "Marsh", "Moor"], [2, 45, null, 0, 0], [100, 500, null, 500, 0], 0.05],
      gives: [
        ["flock", "seen", "share", "low 95 %", "high 95 %", "low 99.8 %", "high 99.8 %", "word"],
        ["Hill", 100, 0.02, about(0.0061229314), about(0.091907344), 0, about(0.1246384954), "within the limits"],
        [
          "Low",
          500,
          0.09,
          about(0.0307125403),
          about(0.068990883),
          about(0.0215794322),
          about(0.0815992396),
          "above the 99.8 % limit",
        ],
        [
          "Marsh",
          500,
          0,
          about(0.0307125403),
          about(0.068990883),
          about(0.0215794322),
          about(0.0815992396),
          "below the 99.8 % limit",
        ],
        ["Moor", 0, "", "", "", "", "", "no sheep seen"],
      ],
    },
    {
      shows: "Against the share of all flocks together",
      call: [
        ["Hill", "Low"],
        [4, 6],
        [100, 100],
      ],
      gives: [
        ["flock", "seen", "share", "low 95 %", "high 95 %", "low 99.8 %", "high 99.8 %", "word"],
        ["Hill", 100, 0.04, about(0.0061229314), about(0.091907344), 0, about(0.1246384954), "within the limits"],
        ["Low", 100, 0.06, about(0.0061229314), about(0.091907344), 0, about(0.1246384954), "within the limits"],
      ],
    },
    {
      shows: "One sheep seen and lame: it lies beyond the line drawn, but 1 in 20 such looks would",
      call: [["Hill"], [1], [1], 0.05],
      gives: [
        ["flock", "seen", "share", "low 95 %", "high 95 %", "low 99.8 %", "high 99.8 %", "word"],
        ["Hill", 1, 1, 0, about(0.5), 0, about(0.98), "within the limits"],
      ],
    },
    {
      shows: "Limits that allow for flocks that differ; four flocks hardly show how much, so they are wide",
      call: [["Hill", "Low", "Marsh", "Moor"], [2, 45, 10, 30], [100, 500, 300, 250], undefined, true],
      gives: [
        ["flock", "seen", "share", "low 95 %", "high 95 %", "low 99.8 %", "high 99.8 %", "word"],
        ["Hill", 100, 0.02, 0, about(0.2304443987), 0, about(0.6007419778), "within the limits"],
        ["Low", 500, 0.09, 0, about(0.2245403074), 0, about(0.597475197), "within the limits"],
        ["Marsh", 300, about(0.0333333333), 0, about(0.2255330161), 0, about(0.5980206613), "within the limits"],
        ["Moor", 250, 0.12, 0, about(0.2260353058), 0, about(0.5982946776), "within the limits"],
      ],
    },
    {
      call: [["Hill"], [4], [100], 0.05, "yes"],
      gives: problem("flocks: one flock alone does not show how much flocks differ; give two flocks or more"),
    },
    {
      call: [["Hill"], [4], [100]],
      gives: problem("flocks: one flock alone cannot be compared with itself; give two flocks or more, or a target"),
    },
    {
      call: [
        ["Hill", "Low"],
        [4, 101],
        [100, 100],
      ],
      gives: problem("lame, row 2: 101 is more than the 100 seen; enter the lame sheep among those seen"),
    },
    {
      call: [
        ["Hill", null],
        [4, 6],
        [100, 100],
      ],
      gives: problem("flocks, row 2: it is blank, but the row holds a record; enter the name of a flock"),
    },
    {
      call: [
        ["Hill", "Low"],
        [0, 0],
        [0, 0],
      ],
      gives: nothing("seen: no sheep were seen, so there is nothing to compare"),
    },
  ],
});
