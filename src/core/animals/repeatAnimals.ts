import type { Day } from "../../cells/day.ts";
import { showDay } from "../../cells/day.ts";
import { Problem } from "../../cells/problem.ts";
import { isFull } from "../words/alikeAmong.ts";
import type { Tag } from "../words/tagKey.ts";
import { enoughTogether, type TooFew } from "./enoughTogether.ts";
import {
  anyAnimal,
  type DoubtedRecord,
  type DoubtedRecords,
  doubtedByAnimal,
  doubtInWords,
  readableRecords,
} from "./readableRecords.ts";
import { type RowsByAnimal, rowsByAnimal } from "./rowsByAnimal.ts";

export interface RepeatAnimal {
  readonly tag: string;
  /** "not known" where a record that may belong to the animal cannot be read. */
  readonly cases: number | "not known";
  /** First day of the first case counted; what cannot be read, where the cases are not known. */
  readonly first: Day | string;
  /** Last record of the last case counted. */
  readonly last: Day | undefined;
}

export interface RepeatRule {
  /** How many cases make a repeat animal, 1 or more. */
  readonly atLeast: number;
  readonly gapDays: number;
  /** Cases whose first record lies on or after this day count. */
  readonly from?: Day | undefined;
  /** Cases whose first record lies on or before this day count. */
  readonly until?: Day | undefined;
}

/**
 * The animals with several cases, most cases first; equals in order of latest record, newest first.
 *
 * A case counts when its first record lies within `from` to `until`: one that began before and runs on is not new.
 * Records outside still join what belongs together. A record of which the tag or the day cannot be read may be a case
 * more: an animal that could then have enough cases stands first, and so does a line for records without a tag. An animal
 * that has enough only together with another whose tag is alike may be a repeat animal too, and stands there.
 *
 * @param rowOf - the row of the sheet for a place in the columns
 * @throws Problem when `from` is after `until`
 * @see two cases in a season, then consider culling: read, common practice
 * @example
 * repeatAnimals({ tags: [a, a], dates: [46063, 46100] }, { atLeast: 2, gapDays: 14 }, (index) => index + 1)
 * // → [{ tag: "041", cases: 2, first: 46063, last: 46100 }]
 */
export function repeatAnimals(
  records: DoubtedRecords,
  rule: RepeatRule,
  rowOf: (index: number) => number,
): readonly RepeatAnimal[] {
  const { atLeast, from, until } = rule;
  if (from !== undefined && until !== undefined && from > until)
    throw new Problem(`${showDay(from)} is after until, ${showDay(until)}; change them over`, { argument: "from" });
  const { tags, dates, doubted } = readableRecords(records);
  const ofAnimal = doubtedByAnimal(doubted);
  const mayBeMore = (key: string): number => ofAnimal.get(key)?.length ?? 0;
  const animals: CountedAnimal[] = [];
  const notKnown: RepeatAnimal[] = [];
  const met = new Set<string>();
  const doubt = (tag: string, rows: readonly DoubtedRecord[]): void => {
    notKnown.push({ tag, cases: "not known", first: doubtInWords(rows, rowOf), last: undefined });
  };
  const untagged = doubted.filter(({ tag, date }) => tag === undefined && mayBeCounted(date, rule));
  if (untagged.length > 0) doubt(anyAnimal, untagged);
  const byAnimal = rowsByAnimal(tags, dates);
  const mayBeAlike = !byAnimal.firstRow.every((row) => isFull(tags[row] as Tag));
  const tooFew: TooFew[] = [];
  for (const animal of countedAnimals(tags, dates, byAnimal, rule, ofAnimal.size === 0 && !mayBeAlike ? atLeast : 1)) {
    const { tag, cases } = animal;
    const more = ofAnimal.size === 0 ? 0 : mayBeMore(tag.key);
    if (more > 0) met.add(tag.key);
    if (cases + more < atLeast) tooFew.push({ tag, count: cases + more });
    else if (more === 0) animals.push(animal);
    else doubt(tag.shown, ofAnimal.get(tag.key) as readonly DoubtedRecord[]);
  }
  for (const [key, rows] of ofAnimal) {
    const tag = rows[0]?.tag;
    if (tag === undefined || met.has(key)) continue;
    if (rows.length >= atLeast) doubt(tag.shown, rows);
    else tooFew.push({ tag, count: rows.length });
  }
  for (const { tag, why } of enoughTogether(tooFew, atLeast, "cases"))
    notKnown.push({ tag, cases: "not known", first: why, last: undefined });
  animals.sort((a, b) => b.cases - a.cases || b.last - a.last);
  return [...notKnown, ...animals.map(({ tag, cases, first, last }) => ({ tag: tag.shown, cases, first, last }))];
}

/** A record before the season can begin no case of it, and neither can one after it. */
const mayBeCounted = (date: Day | undefined, { from, until }: RepeatRule): boolean =>
  date === undefined || ((from === undefined || date >= from) && (until === undefined || date <= until));

interface CountedAnimal {
  readonly tag: Tag;
  readonly cases: number;
  readonly first: Day;
  readonly last: Day;
}

/** The animals with so many cases that count, or more, in order of first record row. */
function* countedAnimals(
  tags: readonly Tag[],
  dates: readonly Day[],
  { order, starts, firstRow }: RowsByAnimal,
  rule: RepeatRule,
  fewest: number,
): Generator<CountedAnimal> {
  const { gapDays } = rule;
  for (let animal = 0; animal < firstRow.length; animal++) {
    const end = starts[animal + 1] as number;
    let count = 0;
    let counted = false;
    let first: Day | undefined;
    let last: Day | undefined;
    let before: Day | undefined;
    // The rule of `cases`, without keeping the cases: most animals have too few to be listed.
    for (let at = starts[animal] as number; at < end; at++) {
      const day = dates[order[at] as number] as Day;
      if (before === undefined || day - before > gapDays) {
        counted = mayBeCounted(day, rule);
        if (counted) {
          count++;
          first ??= day;
        }
      }
      if (counted) last = day;
      before = day;
    }
    if (count < fewest || first === undefined || last === undefined) continue;
    yield { tag: tags[firstRow[animal] as number] as Tag, cases: count, first, last };
  }
}
