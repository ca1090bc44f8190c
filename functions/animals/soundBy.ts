import { dayOf } from "../../src/cells/day.ts";
import { type SoundShare, soundBy } from "../../src/core/animals/soundBy.ts";
import { about, defineFunction } from "../../src/definition/defineFunction.ts";
import { nothing, problem } from "../../src/definition/problemExamples.ts";
import { wholeDays } from "../../src/reading/numbers.ts";
import { one } from "../../src/reading/parameter.ts";
import { row } from "../../src/writing/result.ts";
import { cureChoices, cureColumns, cureEnds, cureNotes, cureRowFault, cureSources } from "./cureColumns.ts";
import { remission } from "./remission.ts";

export const soundByFunction = defineFunction({
  name: "SOUNDBY",
  summary:
    "The share of treated sheep that are sound within so many days, with its limits; sheep still lame are counted fairly.",
  questions: [
    "how many are sound a week after treatment",
    "does the treatment work",
    "recovery rate of lame sheep",
    "is the treatment working",
  ],
  notes: [
    ...cureNotes,
    "Past the longest time that any animal was watched there is no answer while some were still lame: #N/A. If the one watched longest became sound, the share is then 100 %, though others may still be lame.",
  ],
  parameters: {
    ...cureColumns,
    by_days: one(wholeDays, "Days after treatment"),
    ...cureChoices,
  },
  result: row<SoundShare>(
    ["share sound", "share", ({ share }) => share],
    ["low", "share", ({ low }) => low],
    ["high", "share", ({ high }) => high],
  ),
  caution: undefined,
  sources: cureSources,
  rowFault: cureRowFault,
  compute: (values) => soundBy(cureEnds(values), values.by_days, values.confidence),
  examples: [
    {
      shows: "A published set of 21: by day 6",
      call: [remission.began, remission.ended, remission.asOf, 6],
      gives: [[about(0.142857, 6), about(0.048448, 6), about(0.380282, 6)]],
    },
    {
      shows: "Four sheep, a blank row, one still lame",
      call: [
        [dayOf("2026-03-02"), dayOf("2026-03-02"), null, dayOf("2026-03-05"), dayOf("2026-03-06")],
        [dayOf("2026-03-04"), dayOf("2026-03-09"), null, dayOf("2026-03-12"), null],
        dayOf("2026-03-20"),
        7,
        0.9,
      ],
      gives: [[0.75, about(0.3911183671), about(0.9792164806)]],
    },
    {
      // All four were watched to the end, so the share is binomial: standard error √(¼ ¾ / 4).
      shows: "One sold lame three days after treatment: it never became sound",
      call: [
        [dayOf("2026-03-02"), dayOf("2026-03-02"), dayOf("2026-03-02"), dayOf("2026-03-02")],
        [dayOf("2026-03-07"), null, null, null],
        dayOf("2026-03-20"),
        7,
        undefined,
        [null, null, null, dayOf("2026-03-05")],
      ],
      gives: [[0.25, about(0.0394513577), about(0.8720530824)]],
    },
    {
      shows: "Five sound on day 7, five culled lame on day 5: half",
      call: [
        Array<number>(10).fill(dayOf("2026-03-02")),
        [...Array<number>(5).fill(dayOf("2026-03-09")), ...Array<null>(5).fill(null)],
        dayOf("2026-04-01"),
        14,
        undefined,
        [...Array<null>(5).fill(null), ...Array<number>(5).fill(dayOf("2026-03-07"))],
      ],
      gives: [[0.5, about(0.246825923), about(0.8163944094)]],
    },
    {
      shows: "Two of four were not looked at again: they count for nothing after the day of treatment",
      call: [
        ["2026-03-02", "2026-03-02", "2026-03-02", "2026-03-02"],
        ["2026-03-09", null, null, null],
        dayOf("2026-04-01"),
        7,
        undefined,
        undefined,
        ["2026-03-09", "2026-03-10", null, null],
      ],
      gives: [[0.5, about(0.0895899152), about(0.9940169124)]],
    },
    {
      shows: "None sound by day 1: no limits",
      call: [[dayOf("2026-03-02")], [dayOf("2026-03-04")], dayOf("2026-03-20"), 1],
      gives: [[0, "", ""]],
    },
    {
      call: [[dayOf("2026-03-02")], [null], dayOf("2026-03-20"), 28],
      gives: nothing(
        "by_days: no animal was watched for 28 days and some were still lame; the longest is 18, so ask for 18 or fewer",
      ),
    },
    {
      shows: "A sheep found sound before it was treated is left out",
      call: [
        [dayOf("2026-03-02"), dayOf("2026-03-05")],
        [dayOf("2026-03-04"), dayOf("2026-03-04")],
        dayOf("2026-03-20"),
        7,
      ],
      gives: [
        [
          1,
          "",
          "",
          "1 row left out; to mend: sound_on, row 2: 4 Mar 2026 is before the treatment on 5 Mar 2026; mend one of the two dates",
        ],
      ],
    },
    {
      call: [[dayOf("2026-03-02")], [null], dayOf("2026-03-01"), 7],
      gives: problem("treated: 2 Mar 2026 is after as_of, 1 Mar 2026; mend one of the two dates"),
    },
  ],
});
