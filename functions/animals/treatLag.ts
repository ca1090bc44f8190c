import { dayOf } from "../../src/cells/day.ts";
import { lagFault, type TreatLag, treatLag } from "../../src/core/animals/treatLag.ts";
import { about, defineFunction } from "../../src/definition/defineFunction.ts";
import { nothing, problem } from "../../src/definition/problemExamples.ts";
import { day } from "../../src/reading/days.ts";
import { wholeDays } from "../../src/reading/numbers.ts";
import { column, gappedColumn, leavingOut, oneOr, oneOrNone } from "../../src/reading/parameter.ts";
import { row } from "../../src/writing/result.ts";
import { leftOutNote } from "../leftOutNote.ts";
import { sources } from "../sources.ts";

export const treatLagFunction = defineFunction({
  name: "TREATLAG",
  summary:
    "How long lame sheep wait for treatment: median days, share treated in time, and how many are still untreated.",
  questions: [
    "how fast do we treat lame sheep",
    "days from seeing lame to treating",
    "how many are treated within three days",
  ],
  notes: [
    "The median is of the treated sheep. Treated on the day it was seen is 0 days.",
    "Without as_of, the share in time is of the treated sheep, so sheep that are never treated do not show in it: look at the third number too.",
    "With as_of, the share in time is of the sheep seen lame more than within_days before: one still untreated is late. Sheep seen later than that count neither way, treated or not, since their days are not over.",
    "A part that cannot be told stays blank.",
    leftOutNote,
  ],
  parameters: {
    seen_lame: leavingOut(column(day, "Day each sheep was seen lame")),
    treated: leavingOut(gappedColumn(day, "Day it was treated, blank while it is not; the same rows")),
    within_days: oneOr(wholeDays, 3, "Days within which a treatment is in time"),
    as_of: oneOrNone(day, "Day up to which the records are complete, usually TODAY()"),
  },
  result: row<TreatLag>(
    ["median days", "number", ({ medianDays }) => medianDays],
    ["share in time", "share", ({ inTime }) => inTime],
    ["still untreated", "count", ({ untreated }) => untreated],
  ),
  caution: undefined,
  sources: [sources.promptTreatment],
  rowFault: ({ seen_lame, treated, as_of }, index) =>
    lagFault(index, seen_lame[index] as number, treated[index], as_of),
  compute: ({ seen_lame, treated, within_days, as_of }) => treatLag(seen_lame, treated, within_days, as_of),
  examples: [
    {
      shows: "Waits of 0, 1 and 5 days, one untreated, a blank row",
      call: [
        [dayOf("2026-03-02"), dayOf("2026-03-02"), null, dayOf("2026-03-05"), dayOf("2026-03-10")],
        [dayOf("2026-03-02"), dayOf("2026-03-03"), null, dayOf("2026-03-10"), null],
      ],
      gives: [[1, about(0.6666666667), 1]],
    },
    {
      shows: "The same on 20 Mar: the untreated one is late",
      call: [
        [dayOf("2026-03-02"), dayOf("2026-03-02"), dayOf("2026-03-05"), dayOf("2026-03-10")],
        [dayOf("2026-03-02"), dayOf("2026-03-03"), dayOf("2026-03-10"), null],
        3,
        dayOf("2026-03-20"),
      ],
      gives: [[1, 0.5, 1]],
    },
    {
      shows: "On 11 Mar: of the two seen on 10 Mar neither counts for the share yet, though one is treated",
      call: [
        [dayOf("2026-03-02"), dayOf("2026-03-05"), dayOf("2026-03-10"), dayOf("2026-03-10")],
        [dayOf("2026-03-03"), dayOf("2026-03-10"), dayOf("2026-03-10"), null],
        3,
        dayOf("2026-03-11"),
      ],
      gives: [[1, 0.5, 1]],
    },
    {
      shows: "A sheep treated before it was seen lame, and one without the day it was seen",
      call: [
        [dayOf("2026-03-02"), dayOf("2026-03-05"), null],
        [dayOf("2026-03-03"), dayOf("2026-03-04"), dayOf("2026-03-04")],
      ],
      gives: [
        [
          1,
          1,
          0,
          "2 rows left out; the first to mend: treated, row 2: 4 Mar 2026 is before the sheep was seen lame on 5 Mar 2026; mend one of the two dates",
        ],
      ],
    },
    {
      call: [["03/04/2026"], [dayOf("2026-03-04")]],
      gives: problem('seen_lame: "03/04/2026" is not a date; enter a real date, or text such as 2026-03-14'),
    },
    {
      call: [
        [null, null],
        [null, null],
      ],
      gives: nothing("seen_lame: no lame sheep is recorded"),
    },
  ],
});
