import type { Moment } from "../../cells/day.ts";
import { showMoment } from "../../cells/day.ts";
import { alikeAmong } from "../words/alikeAmong.ts";
import type { Tag } from "../words/tagKey.ts";
import {
  type AnimalClear,
  type Clearing,
  type FlockClear,
  type GroupClear,
  type UnknownClear,
  whenClear,
} from "./clearByAnimal.ts";
import { mayBeGroup } from "./mayBeGroup.ts";

/** What holds an animal back beside its own treatments, and why it may concern it. */
interface OtherHold {
  readonly clearing: Clearing;
  /** Whether it is known to concern the animal: its group was treated. */
  readonly sure: boolean;
  readonly why: string;
}

/** Which group an animal is of: its name as `nameKey` gives it, or undefined where nobody knows. */
type GroupKey = string | undefined;

/** Finds what holds an animal back on a day, beside its own treatments: the one that is over last. */
export type OtherHolds = (tag: Tag, group: GroupKey) => OtherHold | undefined;

/**
 * What may concern an animal although it stands under another tag, under a group's name or under none: a treatment
 * without a readable tag, a treatment of its group, and those of an animal whose tag is alike. What is over concerns none.
 *
 * @param day - what is over on that day holds nobody; a period that ends during the day is not over when it begins
 * @param rowOf - the row of the sheet for a place in the treatment columns
 */
export function otherHolds(
  { animals, groups, unknown }: FlockClear,
  day: Moment,
  rowOf: (index: number) => number,
): OtherHolds {
  const isHeld = (clearing: Clearing): boolean => whenClear(clearing) > day;
  const alike = alikeAmong(animals.values.filter(isHeld));
  const heldGroups = [...groups].filter(([, clearing]) => isHeld(clearing));
  const anyone: OtherHold | undefined =
    unknown !== undefined && isHeld(unknown)
      ? { clearing: unknown, sure: false, why: unknownInWords(unknown, rowOf) }
      : undefined;
  return (tag, group) => {
    let last = anyone;
    for (const [key, treated] of heldGroups) {
      const sure = key === group;
      if (!sure && group !== undefined && !mayBeGroup(key, group)) continue;
      last = later(last, { clearing: treated, sure, why: groupInWords(treated, rowOf, sure) });
    }
    for (const other of alike(tag))
      last = later(last, { clearing: other, sure: false, why: alikeInWords(other, rowOf) });
    return last;
  };
}

const later = (one: OtherHold | undefined, other: OtherHold): OtherHold =>
  one === undefined || whenClear(other.clearing) > whenClear(one.clearing) ? other : one;

/** Until when something holds, in words, with the row that says so. */
const untilInWords = ({ gap, clear, index }: Clearing, rowOf: (index: number) => number): string =>
  gap === undefined && clear !== undefined
    ? `not clear until ${showMoment(clear)}`
    : `not known: ${gap?.inRow(rowOf(index))}`;

export const alikeInWords = (other: AnimalClear, rowOf: (index: number) => number): string =>
  `it may be ${other.tag.shown}, row ${rowOf(other.index)}, ${untilInWords(other, rowOf)}`;

/** A treated animal that is clear, for a tag under which nothing is recorded. */
export const namesakeInWords = ({ tag, clear, index }: AnimalClear, rowOf: (index: number) => number): string =>
  `it may be ${tag.shown}, row ${rowOf(index)}${clear === undefined ? "" : `, clear since ${showMoment(clear)}`}`;

const groupInWords = (treated: GroupClear, rowOf: (index: number) => number, sure: boolean): string =>
  `${sure ? "its group" : "it may be of the group"} ${treated.group}, row ${rowOf(treated.index)}, ${sure ? "is " : ""}${untilInWords(treated, rowOf)}`;

/** Why a treatment that is found under no tag concerns every animal. */
export function unknownInWords(unknown: UnknownClear, rowOf: (index: number) => number): string {
  const { who, index, rows } = unknown;
  const others = rows === 1 ? "" : `; ${rows} treatments are so`;
  return `${who.inRow(rowOf(index))}; it may be any animal, ${untilInWords(unknown, rowOf)}${others}`;
}
