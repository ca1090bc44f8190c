import { type Day, showDay } from "../../cells/day.ts";
import { Doubt } from "../../cells/doubt.ts";
import { alikeAmong } from "../words/alikeAmong.ts";
import type { Tag } from "../words/tagKey.ts";
import { rowsByAnimal } from "./rowsByAnimal.ts";
import type { Soundness } from "./soundness.ts";

export interface KeptApart {
  /** "any animal" where the tag of a lame animal's record cannot be read. */
  readonly tag: string;
  readonly why: string;
  /** Undefined where no record of the animal can be read. */
  readonly lastRecord: Day | undefined;
}

/** What was recorded of animals, a row a record; all columns have the same length. */
export interface ApartRecords {
  readonly tags: readonly (Tag | Doubt)[];
  readonly dates: readonly (Day | Doubt)[];
  /** What each record says. */
  readonly states: readonly (Soundness | Doubt)[];
  /**
   * Where a record is a case: the days on which its animal was sound again and left the flock, each a record of its own;
   * undefined where that has not come.
   */
  readonly soundOn?: readonly (Day | undefined | Doubt)[] | undefined;
  readonly leftOn?: readonly (Day | undefined | Doubt)[] | undefined;
}

/**
 * The animals to keep apart at an event: those last recorded lame, and those sound again for fewer than `settleDays`.
 *
 * Sound days count from the first sound record after the last lame one. Of two records on one day, lame stands over
 * sound, and gone over both. An animal that was never recorded lame, or has gone since, is not listed. Records after the
 * event are left out.
 *
 * Where a record cannot be read, or its days cannot have followed each other, its animal is listed if any of its records
 * may say lame. A lame record without a readable tag is any animal's until its case is over. An animal is listed for one
 * that is kept apart and whose tag is alike.
 *
 * @param event - the day of housing, turnout or weaning
 * @param rowOf - the row of the sheet for a place in the records
 * @returns what is in doubt first, then lame animals, then those settling; each in order of first record row
 * @see lame sheep apart until sound: common practice, no source
 * @example
 * keepApart(46100, { tags: [a, b], dates: [46090, 46070], states: ["lame", "sound"] }, 7, (index) => index + 1)
 * // → [{ tag: a.shown, why: "lame on 9 Mar 2026", lastRecord: 46090 }]
 */
export function keepApart(
  event: Day,
  records: ApartRecords,
  settleDays: number,
  rowOf: (index: number) => number,
): readonly KeptApart[] {
  const { clean, doubted } = partedRecords(records, event, settleDays);
  const { lame, settling, animals } = apartFrom(clean, event, settleDays);
  const inDoubt = linesInDoubt(doubted, clean, event, rowOf);
  const listed = new Set(inDoubt.flatMap(({ animal }) => (animal === undefined ? [] : [animal.key])));
  const known = [...lame, ...settling];
  const others = listed.size === 0 ? known : known.filter(({ animal }) => !listed.has(animal.key));
  const alike = linesAlike([...inDoubt, ...others], animals, clean, doubted);
  return [...inDoubt, ...alike, ...others].map(({ tag, why, lastRecord }) => ({ tag, why, lastRecord }));
}

/** A line with the animal it is about; undefined where that may be any. */
interface Line extends KeptApart {
  readonly animal: Tag | undefined;
}

interface AnimalLine extends Line {
  readonly animal: Tag;
}

interface Doubted {
  readonly index: number;
  readonly tag: Tag | undefined;
  readonly state: Soundness | Doubt;
  readonly doubt: Doubt;
}

/** The records that can be read, with the days of their cases as records of their own; and those that cannot. */
function partedRecords(
  { tags, dates, states, soundOn = [], leftOn = [] }: ApartRecords,
  event: Day,
  settleDays: number,
): { readonly clean: Records; readonly doubted: readonly Doubted[] } {
  const doubted: Doubted[] = [];
  const hasDoubt = [tags, dates, states, soundOn, leftOn].some(holdsDoubt);
  if (!hasDoubt && soundOn.length + leftOn.length === 0) return { clean: { tags, dates, states } as Records, doubted };
  const isClean = hasDoubt ? () => false : (index: number) => daysFollow(dates, soundOn, leftOn, index);
  const faulty = new Set<number>();
  // Only a record that may be in doubt is looked at part by part: that costs more than all the rest.
  for (let index = 0; index < tags.length; index++) {
    if (isClean(index)) continue;
    const record: OneRecord = {
      tag: tags[index] as Tag | Doubt,
      date: dates[index] as Day | Doubt,
      state: states[index] as Soundness | Doubt,
      sound: soundOn[index],
      left: leftOn[index],
    };
    const doubt = doubtOf(record);
    if (doubt === undefined) continue;
    faulty.add(index);
    const { tag, state } = record;
    if (!isOver(record, event, settleDays))
      doubted.push({ index, tag: tag instanceof Doubt ? undefined : tag, state, doubt });
  }
  const stays = (_: unknown, index: number): boolean => !faulty.has(index);
  const readable = <T>(column: readonly T[]): T[] => (faulty.size === 0 ? column.slice() : column.filter(stays));
  const clean = {
    tags: readable(tags) as Tag[],
    dates: readable(dates) as Day[],
    states: readable(states) as State[],
  };
  for (let index = 0; index < tags.length; index++) {
    const sound = soundOn[index] as Day | undefined;
    const left = leftOn[index] as Day | undefined;
    if ((sound === undefined && left === undefined) || faulty.has(index)) continue;
    const add = (date: Day, state: State): void => {
      clean.tags.push(tags[index] as Tag);
      clean.dates.push(date);
      clean.states.push(state);
    };
    if (sound !== undefined) add(sound, sound === dates[index] ? "sound the same day" : "sound");
    if (left !== undefined) add(left, "gone");
  }
  return { clean, doubted };
}

/** Whether the case of a record that can be read was not over before it began. */
function daysFollow(
  dates: ApartRecords["dates"],
  soundOn: NonNullable<ApartRecords["soundOn"]>,
  leftOn: NonNullable<ApartRecords["leftOn"]>,
  index: number,
): boolean {
  const date = dates[index] as Day;
  const sound = soundOn[index] as Day | undefined;
  const left = leftOn[index] as Day | undefined;
  return (sound === undefined || sound >= date) && (left === undefined || left >= date);
}

function holdsDoubt(column: readonly unknown[]): boolean {
  // Most cells are numbers and words, which need no look at what they are made of.
  for (const cell of column) if (typeof cell === "object" && cell instanceof Doubt) return true;
  return false;
}

interface OneRecord {
  readonly tag: Tag | Doubt;
  readonly date: Day | Doubt;
  readonly state: Soundness | Doubt;
  readonly sound: Day | undefined | Doubt;
  readonly left: Day | undefined | Doubt;
}

/** What of a record cannot be read, or does not fit. */
function doubtOf({ tag, date, state, sound, left }: OneRecord): Doubt | undefined {
  for (const part of [tag, date, state, sound, left]) if (part instanceof Doubt) return part;
  for (const [argument, day] of [
    ["sound_on", sound],
    ["left_on", left],
  ] as const)
    if (day !== undefined && (day as Day) < (date as Day))
      return new Doubt(argument, {
        what: `${showDay(day as Day)} is before the record of ${showDay(date as Day)}`,
        mend: "mend one of the two dates",
      });
  return undefined;
}

/** Whether a record that cannot be read in all its parts has nothing to say at the event: it comes later, or is over. */
function isOver({ tag, date, state, sound, left }: OneRecord, event: Day, settleDays: number): boolean {
  if (!(date instanceof Doubt) && date > event) return true;
  // Nobody is lame for a record that says sound or gone, and whoever it is about stays listed without it.
  if (tag instanceof Doubt && (state === "sound" || state === "gone")) return true;
  if (!(tag instanceof Doubt) || date instanceof Doubt || state instanceof Doubt) return false;
  if (sound instanceof Doubt || left instanceof Doubt) return false;
  const isIn = (day: Day | undefined, until: Day): boolean => day !== undefined && day >= date && day <= until;
  return isIn(left, event) || isIn(sound, event - settleDays);
}

function linesInDoubt(
  doubted: readonly Doubted[],
  clean: Records,
  event: Day,
  rowOf: (index: number) => number,
): readonly Line[] {
  if (doubted.length === 0) return [];
  const untagged = doubted.filter(({ tag }) => tag === undefined);
  const [first] = untagged;
  const lines: Line[] = [];
  if (first !== undefined) {
    const others = untagged.length === 1 ? "" : `; ${untagged.length} rows are so`;
    const why = `not known: ${first.doubt.inRow(rowOf(first.index))}; it may be any animal${others}`;
    lines.push({ tag: "any animal", why, lastRecord: undefined, animal: undefined });
  }
  const ofAnimal = new Map<string, Doubted>();
  const mayBeLame = new Set<string>();
  for (const record of doubted) {
    const { tag, state } = record;
    if (tag === undefined) continue;
    if (!ofAnimal.has(tag.key)) ofAnimal.set(tag.key, record);
    if (state === "lame" || state instanceof Doubt) mayBeLame.add(tag.key);
  }
  const lastRecord = new Map<string, Day>();
  clean.tags.forEach(({ key }, row) => {
    const date = clean.dates[row] as Day;
    if (date > event || !ofAnimal.has(key)) return;
    lastRecord.set(key, Math.max(date, lastRecord.get(key) ?? date));
    if (clean.states[row] === "lame") mayBeLame.add(key);
  });
  for (const [key, { tag, doubt, index }] of ofAnimal)
    if (tag !== undefined && mayBeLame.has(key))
      lines.push({
        tag: tag.shown,
        why: `not known: ${doubt.inRow(rowOf(index))}`,
        lastRecord: lastRecord.get(key),
        animal: tag,
      });
  return lines;
}

/**
 * Animals that are not listed themselves, for those that are and whose tags are alike.
 *
 * @param animals - the first row of each animal
 */
function linesAlike(
  lines: readonly Line[],
  animals: Int32Array,
  clean: Records,
  doubted: readonly Doubted[],
): readonly AnimalLine[] {
  const listed = lines.flatMap(({ animal, why }) => (animal === undefined ? [] : [{ tag: animal, why }]));
  if (listed.length === 0) return [];
  const alikeTo = alikeAmong(listed);
  const met = new Set(listed.map(({ tag }) => tag.key));
  const found: AnimalLine[] = [];
  const look = (tag: Tag | undefined, lastRecord: Day | undefined): void => {
    if (tag === undefined || met.has(tag.key)) return;
    met.add(tag.key);
    const [other] = alikeTo(tag);
    if (other === undefined) return;
    const why = `it may be ${other.tag.shown}, which is listed: ${other.why}`;
    found.push({ tag: tag.shown, why, lastRecord, animal: tag });
  };
  for (const row of animals) look(clean.tags[row], clean.dates[row]);
  for (const { tag } of doubted) look(tag, undefined);
  return found;
}

/** A case that was over on the day it began: then sound stands over the lame of that one record. */
type State = Soundness | "sound the same day";

interface Records {
  readonly tags: readonly Tag[];
  readonly dates: readonly Day[];
  readonly states: readonly State[];
}

function apartFrom(
  { tags, dates, states }: Records,
  event: Day,
  settleDays: number,
): { readonly lame: readonly AnimalLine[]; readonly settling: readonly AnimalLine[]; readonly animals: Int32Array } {
  const lame: AnimalLine[] = [];
  const settling: AnimalLine[] = [];
  const { order, starts, firstRow } = rowsByAnimal(tags, dates);
  firstRow.forEach((row, number) => {
    let lastLame: Day | undefined;
    let soundSince: Day | undefined;
    let goneOn: Day | undefined;
    let last: Day | undefined;
    // How many cases began on the last lame day and were not over the same day.
    let open = 0;
    for (let at = starts[number] as number; at < (starts[number + 1] as number); at++) {
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
    const animal = tags[row] as Tag;
    const tag = animal.shown;
    if (soundSince === undefined) lame.push({ tag, why: `lame on ${showDay(lastLame)}`, lastRecord: last, animal });
    else if (event - soundSince < settleDays)
      settling.push({
        tag,
        why: `sound only since ${showDay(soundSince)}, lame on ${showDay(lastLame)}; settled on ${showDay(soundSince + settleDays)}`,
        lastRecord: last,
        animal,
      });
  });
  return { lame, settling, animals: firstRow };
}
