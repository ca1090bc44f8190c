import { day } from "../../src/reading/days.ts";
import { confidence } from "../../src/reading/numbers.ts";
import { column, gappedColumn, gappedColumnOrNone, leavingOut, one, oneOr } from "../../src/reading/parameter.ts";
import { leftOutNote } from "../leftOutNote.ts";

/** Treatments and when each animal was sound, for the functions that say how fast they recover. */
export const cureColumns = {
  treated: leavingOut(column(day, "Day of each treatment")),
  sound_on: leavingOut(gappedColumn(day, "Day the animal was found sound, blank while it is not; the same rows")),
  as_of: one(day, "Day up to which the records are complete, usually TODAY()"),
};

/** Given last, since it is seldom needed. */
export const leftColumn = leavingOut(
  gappedColumnOrNone(day, "Day the animal left the flock (sold, died, culled), blank while it is there; the same rows"),
);

export const cureConfidence = oneOr(confidence, 0.95, "How sure the limits are to be");

export const cureNotes = [
  leftOutNote,
  "Day 0 is the day of treatment. An animal not yet sound counts for as long as it was watched: to as_of, or to the day it left the flock.",
  "The limits are left blank while no animal is sound, and once all are, since the method has none there.",
  "Enter the day on which an animal was found sound. If you look only once a week, the curve steps once a week.",
];
