import type { Day } from "../../src/cells/day.ts";
import type { Problem } from "../../src/cells/problem.ts";
import { type CureRecords, watchedAnimals, watchFault } from "../../src/core/animals/watchedAnimals.ts";
import { type Ends, endsByDay } from "../../src/core/statistics/endsByDay.ts";
import { day } from "../../src/reading/days.ts";
import { confidence } from "../../src/reading/numbers.ts";
import { column, gappedColumn, gappedColumnOrNone, leavingOut, one, oneOr } from "../../src/reading/parameter.ts";
import { leftOutNote } from "../leftOutNote.ts";
import { sources } from "../sources.ts";

/** Treatments and when each animal was sound, for the functions that say how fast they recover. */
export const cureColumns = {
  treated: leavingOut(column(day, "Day of each treatment")),
  sound_on: leavingOut(gappedColumn(day, "Day the animal was found sound, blank while it is not; the same rows")),
  as_of: one(day, "Day up to which the records are complete, usually TODAY()"),
};

/** Given last, since they are needed less often. */
export const cureChoices = {
  confidence: oneOr(confidence, 0.95, "How sure the limits are to be"),
  left_on: leavingOut(
    gappedColumnOrNone(
      day,
      "Day the animal left the flock (sold, died, culled), blank while it is there; the same rows",
    ),
  ),
  looked_again: leavingOut(
    gappedColumnOrNone(
      day,
      "Day of the last look at which it was still lame, blank if it was not looked at again; the same rows",
    ),
  ),
};

export const cureNotes = [
  leftOutNote,
  "Day 0 is the day of treatment. An animal that left the flock before it was found sound never became sound: it stays in the share that is not sound.",
  "Give looked_again wherever you can. An animal not found sound is then known to be lame only until the last look at it; one never looked at again counts for nothing after the day of treatment. Without looked_again every animal not found sound counts as lame to as_of, which makes recovery look slower than it is.",
  "With looked_again, an animal found sound some days after a look at which it was lame may have been sound on any day between. The days between are shared out as all the records together make likeliest.",
  "If the sheep that were looked at again are the ones that looked bad, the answer holds for those and not for the others.",
  "Where the day of a finding is known only between two looks, the limits are wider: the exact ones for as many sheep watched to the end as would be so sure.",
  "The limits are left blank while no animal is sound, once all are, and where the looks do not settle them, since the method has none there.",
  "Enter the day on which an animal was found sound. If you look only once a week, the curve steps once a week.",
];

interface CureValues {
  readonly treated: readonly Day[];
  readonly sound_on: readonly (Day | undefined)[];
  readonly as_of: Day;
  readonly left_on: readonly (Day | undefined)[] | undefined;
  readonly looked_again: readonly (Day | undefined)[] | undefined;
}

export const cureSources = [
  sources.kaplanMeier1958,
  sources.aalenJohansen1978,
  sources.therneauMultiState,
  sources.turnbull1976,
  sources.hudgens2001,
  sources.logLogLimits,
  sources.kornGraubard1998,
  sources.freireich1963,
];

/** What is wrong with the days of one row. */
export const cureRowFault = (values: CureValues, index: number): Problem | undefined =>
  watchFault(recordsOf(values), index);

/** The animals by how their watching ended. */
export const cureEnds = (values: CureValues): readonly Ends[] => endsByDay(watchedAnimals(recordsOf(values)));

/** The records in the terms of the computation. */
const recordsOf = ({ treated, sound_on, as_of, left_on, looked_again }: CureValues): CureRecords => ({
  treated,
  soundOn: sound_on,
  asOf: as_of,
  leftOn: left_on,
  lookedAgain: looked_again,
});
