import { Problem } from "../../src/cells/problem.ts";
import { type StandardFlock, standardPrevalence } from "../../src/core/counting/standardPrevalence.ts";
import { about, defineFunction } from "../../src/definition/defineFunction.ts";
import { nothing, problem } from "../../src/definition/problemExamples.ts";
import { count, nonNegative } from "../../src/reading/numbers.ts";
import { column, gappedColumnOrNone } from "../../src/reading/parameter.ts";
import { text } from "../../src/reading/words.ts";
import { table } from "../../src/writing/result.ts";
import { sources } from "../sources.ts";
import { confidenceChoice } from "./gatherColumns.ts";

/** The filled cells of a column of the standard; a gap in a row that holds something is refused. */
function filled<T>(cells: readonly (T | undefined)[], argument: string, wanted: string): readonly T[] {
  return cells.map((cell, index) => {
    if (cell === undefined) {
      throw new Problem(`it is blank, but the row holds a record; enter ${wanted}`, {
        argument,
        index,
      });
    }
    return cell;
  });
}

export const standardPrevalenceFunction = defineFunction({
  name: "STANDARDPREV",
  summary:
    "Each flock's share lame as it would be with a common make-up, so that flocks of ewes and of lambs can be compared.",
  questions: [
    "compare a flock of ewes with a flock of lambs",
    "age-standardised prevalence",
    "share lame for the same make-up of ages",
  ],
  notes: [
    "A row for each flock and group (ewes, lambs, rams; or ages). Rows of the same flock and group are added up; names that differ only in capitals or spaces are one.",
    "standard_groups and standard_sheep give the make-up that all flocks are turned to: the sheep of each group, or their share. Left out, it is that of all sheep seen in all flocks together.",
    "A flock of which no sheep were seen in a group of the standard gets no share, and the note says which group is missing: nothing is known of it. Where a group is in few flocks, give it 0 in standard_sheep.",
    "It mends only the make-up that you name. Flocks still differ in breed, ground, weather and who looked.",
  ],
  parameters: {
    flocks: column(text("the name of a flock"), "Name of the flock in each row"),
    groups: column(text("the name of a group"), "Age or other group in each row"),
    lame: column(count("lame sheep"), "Lame sheep of that flock and group"),
    seen: column(count("sheep looked at"), "Sheep of that flock and group looked at, the same rows"),
    standard_groups: gappedColumnOrNone(text("the name of a group"), "The groups of the common make-up", {
      group: "standard",
    }),
    standard_sheep: gappedColumnOrNone(nonNegative("sheep, or their share"), "Sheep in each of them, or their share", {
      group: "standard",
    }),
    confidence: confidenceChoice,
  },
  result: table<StandardFlock>(
    "no flocks",
    ["flock", "text", ({ flock }) => flock],
    ["seen", "count", ({ seen }) => seen],
    ["share as seen", "share", ({ asSeen }) => asSeen],
    ["standardised share", "share", ({ share }) => share],
    ["low", "share", ({ low }) => low],
    ["high", "share", ({ high }) => high],
    ["note", "text", ({ note }) => note],
  ),
  caution: undefined,
  sources: [sources.armitageBerry, sources.zouDonner2008, sources.kornGraubard1998],
  compute: ({ flocks, groups, lame, seen, standard_groups, standard_sheep, confidence }) => {
    if ((standard_groups === undefined) !== (standard_sheep === undefined)) {
      const argument = standard_groups === undefined ? "standard_groups" : "standard_sheep";
      throw new Problem("it is left out; give both standard_groups and standard_sheep, or neither", { argument });
    }
    const standard =
      standard_groups && standard_sheep
        ? {
            groups: filled(standard_groups, "standard_groups", "the name of a group"),
            sheep: filled(standard_sheep, "standard_sheep", "the sheep of the group, or their share"),
          }
        : undefined;
    return standardPrevalence({ flocks, groups, lame, seen }, standard, confidence);
  },
  examples: [
    {
      shows: "Invented flocks, one of ewes mostly and one of lambs mostly, turned to as many ewes as lambs",
      call: [
        ["Hill", "Hill", null, "Low", "Low", "Moor"],
        ["ewes", "lambs", null, "ewes", "Lambs", "ewes"],
        [9, 1, null, 2, 6, 3],
        [90, 20, null, 20, 120, 50],
        ["ewes", "lambs"],
        [1, 1],
      ],
      gives: [
        ["flock", "seen", "share as seen", "standardised share", "low", "high", "note"],
        ["Hill", 110, about(10 / 110), about(0.075), about(0.0322206903), about(0.1761484996), ""],
        ["Low", 140, about(8 / 140), about(0.075), about(0.0328264202), about(0.1791847911), ""],
        ["Moor", 50, 0.06, "", "", "", "no lambs seen"],
      ],
    },
    {
      call: [
        ["Hill", "Hill"],
        ["ewes", "hoggs"],
        [1, 1],
        [20, 20],
        ["ewes", "lambs"],
        [1, 1],
      ],
      gives: problem(
        "groups, row 2: hoggs is not among standard_groups; add it there, with 0 sheep if it is not to count",
      ),
    },
    {
      call: [["Hill"], ["ewes"], [1], [20], ["ewes"]],
      gives: problem("standard_sheep: it is left out; give both standard_groups and standard_sheep, or neither"),
    },
    {
      call: [["Hill"], ["ewes"], [1], [20], ["ewes", "Ewes"], [1, 2]],
      gives: problem("standard_groups, row 2: Ewes stands here twice; give each group once"),
    },
    {
      call: [["Hill"], ["ewes"], [1], [20], ["ewes", "lambs"], [1, null]],
      gives: problem(
        "standard_sheep, row 2: it is blank, but the row holds a record; enter the sheep of the group, or their share",
      ),
    },
    { call: [["Hill"], ["ewes"], [0], [0]], gives: nothing("seen: no sheep were seen, so there is no share") },
  ],
});
