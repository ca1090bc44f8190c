import { type Day, showDay } from "../../cells/day.ts";
import { Problem } from "../../cells/problem.ts";
import { rowsByAnimal } from "../episodes/rowsByAnimal.ts";
import type { Tag } from "../tags/tagKey.ts";
import type { Soundness } from "./soundness.ts";

export interface KeptApart {
  readonly tag: string;
  readonly why: string;
  readonly lastRecord: Day;
}

interface FurtherDays {
  readonly soundOn?: readonly (Day | undefined)[] | undefined;
  readonly leftOn?: readonly (Day | undefined)[] | undefined;
}

/**
 * The animals to keep apart at an event: those last recorded lame, and those sound again for fewer than `settleDays`.
 *
 * Sound days count from the first sound record after the last lame one. Of two records on one day, lame stands over
 * sound, and gone over both. An animal that was never recorded lame, or has gone since, is not listed. Records after the
 * event are left out.
 *
 * @param event - the day of housing, turnout or weaning
 * @param states - what each record says
 * @param further - where a record is a case: the days on which its animal was sound again and left the flock, each a record
 *   of its own; undefined where that has not come
 * @throws Problem with the row when one of them lies before the day of the record
 * @returns lame animals first, then those settling; each in order of first record row
 * @see lame sheep apart until sound: common practice, no source
 * @example
 * keepApart(46100, [a, b], [46090, 46070], ["lame", "sound"], 7)
 * // → [{ tag: a.shown, why: "lame on 9 Mar 2026", lastRecord: 46090 }]
 */
export function keepApart(
  event: Day,
  tags: readonly Tag[],
  dates: readonly Day[],
  states: readonly Soundness[],
  settleDays: number,
  { soundOn = [], leftOn = [] }: FurtherDays = {},
): readonly KeptApart[] {
  if (soundOn.length + leftOn.length === 0) return apartFrom({ tags, dates, states }, event, settleDays);
  const all = { tags: [...tags], dates: [...dates], states: [...states] as State[] };
  const add = (days: readonly (Day | undefined)[], state: Soundness, argument: string): void =>
    days.forEach((day, index) => {
      if (day === undefined) return;
      refuseBefore(dates[index] as Day, day, { argument, index });
      all.tags.push(tags[index] as Tag);
      all.dates.push(day);
      all.states.push(state === "sound" && day === dates[index] ? "sound the same day" : state);
    });
  add(soundOn, "sound", "sound_on");
  add(leftOn, "gone", "left_on");
  return apartFrom(all, event, settleDays);
}

/** A case that was over on the day it began: then sound stands over the lame of that one record. */
type State = Soundness | "sound the same day";

interface Records {
  readonly tags: readonly Tag[];
  readonly dates: readonly Day[];
  readonly states: readonly State[];
}

function apartFrom({ tags, dates, states }: Records, event: Day, settleDays: number): readonly KeptApart[] {
  const lame: KeptApart[] = [];
  const settling: KeptApart[] = [];
  const { order, starts, firstRow } = rowsByAnimal(tags, dates);
  firstRow.forEach((row, animal) => {
    let lastLame: Day | undefined;
    let soundSince: Day | undefined;
    let goneOn: Day | undefined;
    let last: Day | undefined;
    // How many cases began on the last lame day and were not over the same day.
    let open = 0;
    for (let at = starts[animal] as number; at < (starts[animal + 1] as number); at++) {
      const record = order[at] as number;
      const day = dates[record] as Day;
      if (day > event) break;
      last = day;
      if (states[record] === "gone") {
        goneOn = day;
        lastLame = undefined;
      } else if (goneOn === day) continue;
      else if (states[record] === "lame") {
        open = lastLame === day ? open + 1 : 1;
        lastLame = day;
        soundSince = undefined;
      } else if (states[record] === "sound the same day") {
        open--;
        if (open === 0) soundSince = day;
      } else if (lastLame !== day) soundSince ??= day;
    }
    if (last === undefined || lastLame === undefined) return;
    const tag = (tags[row] as Tag).shown;
    if (soundSince === undefined) lame.push({ tag, why: `lame on ${showDay(lastLame)}`, lastRecord: last });
    else if (event - soundSince < settleDays)
      settling.push({
        tag,
        why: `sound only since ${showDay(soundSince)}, lame on ${showDay(lastLame)}; settled on ${showDay(soundSince + settleDays)}`,
        lastRecord: last,
      });
  });
  return [...lame, ...settling];
}

function refuseBefore(record: Day, day: Day, place: { readonly argument: string; readonly index: number }): void {
  if (day < record)
    throw new Problem(`${showDay(day)} is before the record of ${showDay(record)}; mend one of the two dates`, place);
}
