import { type PrevalenceChange, prevalenceChange } from "../../src/core/counting/prevalenceChange.ts";
import { about, defineFunction } from "../../src/definition/defineFunction.ts";
import { nothing, problem } from "../../src/definition/problemExamples.ts";
import { count } from "../../src/reading/numbers.ts";
import { column } from "../../src/reading/parameter.ts";
import { row } from "../../src/writing/result.ts";
import { sources } from "../sources.ts";
import { confidenceChoice, gatherNotes, spreadColumns } from "./gatherColumns.ts";

const lame = count("lame sheep");
const seen = count("sheep looked at");

export const prevalenceChangeFunction = defineFunction({
  name: "PREVCHANGE",
  summary:
    "How much the share lame changed between two times, with its range and how likely chance alone does as much.",
  questions: [
    "did lameness go down",
    "compare before and after",
    "is the difference real or chance",
    "better or worse than last year",
  ],
  notes: [
    ...gatherNotes,
    "The change is the share after less the share before: below 0 is better. A range that holds 0 has not shown a change.",
    "p is how often a difference at least this unlikely comes when nothing changed. It does not say how large the change is.",
    'Several rows before or after are several gathers, and gathers of one flock differ by more than chance. So range and p allow for the spread between the rows, and where there are few of them for a spread that is usual as well. Where the rows are parts of one look, add them up, or say spread "chance", which takes all looks as separate; over several gathers its range is far too narrow.',
    "One row before and one after are two days: the range is that of those days, and says nothing of how much days differ.",
    "It supposes two separate looks. Where the same sheep are seen both times and lame ones stay lame, the range is too wide and a change can be missed: where they are known one by one, use PAIREDCHANGE.",
  ],
  parameters: {
    lame_before: column(lame, "Lame sheep before (a cell or a column)", { group: "before" }),
    seen_before: column(seen, "Sheep looked at before, the same rows", { group: "before" }),
    lame_after: column(lame, "Lame sheep after (a cell or a column)", { group: "after" }),
    seen_after: column(seen, "Sheep looked at after, the same rows", { group: "after" }),
    confidence: confidenceChoice,
    spread: spreadColumns.spread,
  },
  result: row<PrevalenceChange>(
    ["change", "share", ({ change }) => change],
    ["low", "share", ({ low }) => low],
    ["high", "share", ({ high }) => high],
    ["p", "p value", ({ p }) => p],
  ),
  caution: undefined,
  sources: [sources.newcombe1998two, sources.wilson1927, sources.fisher1935, sources.kornGraubard1998],
  compute: ({ lame_before, seen_before, lame_after, seen_after, confidence, spread }) =>
    prevalenceChange(
      { lame: lame_before, seen: seen_before },
      { lame: lame_after, seen: seen_after },
      confidence,
      spread,
    ),
  examples: [
    {
      shows: "48 of 80 before, 56 of 70 after",
      call: [48, 80, 56, 70],
      gives: [[about(0.2), about(0.0524314724), about(0.333872654), about(0.01252112975, 11)]],
    },
    {
      shows: "30 of 300 before; after, two gathers with a blank row between them",
      call: [30, 300, [6, null, 4], [120, null, 130]],
      gives: [[about(-0.06), about(-0.3436027225), about(0.0890656821), about(0.3237842424)]],
    },
    {
      shows: "The same by chance alone",
      call: [30, 300, [6, null, 4], [120, null, 130], undefined, "chance"],
      gives: [[about(-0.06), about(-0.1031591458), about(-0.0167403103), about(0.0078685498)]],
    },
    {
      shows: "Four gathers before and four after",
      call: [
        [14, 9, 12, 15],
        [100, 100, 110, 120],
        [3, 4, 2, 5],
        [100, 105, 110, 100],
      ],
      gives: [[about(-0.08254413), about(-0.1557730554), about(-0.0136638976), about(0.0282440873)]],
    },
    { shows: "Twice the same", call: [2, 40, 2, 40], gives: [[0, about(-0.1205937957), about(0.1205937957), 1]] },
    {
      call: [3, 40, [2, 31], [40, 30]],
      gives: problem("lame_after, row 2: 31 is more than the 30 seen; enter the lame sheep among those seen"),
    },
    { call: [0, 0, 2, 40], gives: nothing("seen_before: no sheep were seen, so there is no share") },
  ],
});
