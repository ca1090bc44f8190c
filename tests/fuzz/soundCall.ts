import type { Cell, Cells } from "../../src/cells/cell.ts";
import type { AnyFunction } from "../../src/definition/defineFunction.ts";
import type { Parameter } from "../../src/reading/parameter.ts";
import type { SeededRandom } from "../../src/workbooks/inventedFlock/seededRandom.ts";
import { soundBlock } from "./soundBlock.ts";
import { firstRecord, soundCell } from "./soundCell.ts";

/** One argument of a call: a column as a list, a rectangle, a single cell, or left out. */
export type SoundArgument = readonly Cell[] | Cells | Cell | undefined;

/** A call whose cells are all of the right kind and mostly fit together, by the names of its parameters. */
export interface SoundCall {
  readonly definition: AnyFunction;
  readonly given: Readonly<Record<string, SoundArgument>>;
}

export const parametersOf = (definition: AnyFunction): [string, Parameter<unknown>][] =>
  Object.entries(definition.parameters);

export const isColumn = (argument: SoundArgument): argument is readonly Cell[] =>
  Array.isArray(argument) && !Array.isArray(argument[0]);

/** In each row the first is at most the second. */
const inOrder: readonly (readonly [string, string])[] = [
  // Three in a row are put in order by three steps.
  ["lame", "seen"],
  ["seen", "group_size"],
  ["lame", "seen"],
  ["lame_before", "seen_before"],
  ["lame_after", "seen_after"],
  ["looked_at", "flock_size"],
  ...["treated", "dates"].flatMap(
    (day) =>
      [
        [day, "sound_on"],
        ["sound_on", "left_on"],
        [day, "sound_on"],
        // Where the day between them is blank.
        [day, "left_on"],
      ] as const,
  ),
  ["looked_again", "left_on"],
  ["treated", "looked_again"],
  ["seen_lame", "treated"],
  ...[
    ["share_low", "share_lame", "share_high"],
    ["cases_low", "cases_per_lame_year", "cases_high"],
    ["loss_low", "loss_per_case", "loss_high"],
  ].flatMap(([low = "", likely = "", high = ""]) => [
    [low, likely] as const,
    [likely, high] as const,
    [low, likely] as const,
    [low, high] as const,
  ]),
  ["arrived", "last_new_case"],
  ["first", "until"],
  ["base_width_cm", "top_width_cm"],
];

/** Both are given, or neither. */
const together: readonly (readonly [string, string])[] = [["standard_groups", "standard_sheep"]];

/** Later than every record. */
const afterRecords = new Set(["as_of", "event_date", "sale_date", "until"]);

export function soundCall(definition: AnyFunction, random: SeededRandom): SoundCall {
  const heights = new Map<string, number>();
  const heightOf = (group: string): number => {
    const height = heights.get(group) ?? random.whole(random.happens(0.1) ? 1 : 2, 12);
    heights.set(group, height);
    return height;
  };
  const given: Record<string, SoundArgument> = {};
  for (const [name, parameter] of parametersOf(definition)) {
    const gaps = random.pick([0, 0, 0.12]);
    if (parameter.optional && random.happens(0.4)) given[name] = undefined;
    else if (parameter.shape === "block") given[name] = soundBlock(name, random);
    else if (parameter.shape === "column" && !(parameter.repeats && random.happens(0.3)))
      given[name] = Array.from({ length: heightOf(parameter.group) }, () =>
        parameter.gaps === "keep" && random.happens(gaps) ? null : soundCell(name, parameter.kind, random),
      );
    else given[name] = soundCell(name, parameter.kind, random);
  }
  fitTogether(given, random);
  return { definition, given };
}

function fitTogether(given: Record<string, SoundArgument>, random: SeededRandom): void {
  for (const [one, other] of together)
    if (given[one] === undefined || given[other] === undefined) given[one] = given[other] = undefined;
  for (const name of afterRecords)
    if (typeof given[name] === "number") given[name] = firstRecord + random.whole(121, 200);
  for (const [low, high] of inOrder) {
    const [lows, highs] = [given[low], given[high]];
    if (isColumn(lows) && isColumn(highs)) {
      given[low] = lows.map((cell, row) => lesser(cell, highs[row]));
      given[high] = highs.map((cell, row) => greater(cell, lows[row]));
    } else if (!isColumn(lows) && !isColumn(highs) && lows !== undefined && highs !== undefined) {
      given[low] = lesser(lows as Cell, highs as Cell);
      given[high] = greater(highs as Cell, lows as Cell);
    }
  }
  if (typeof given.flock_size === "number" && isColumn(given.seen))
    given.flock_size = given.seen.reduce<number>((sum, cell) => sum + Number(cell), random.whole(1, 300));
  if (typeof given.became_lame === "number" && typeof given.became_sound === "number")
    given.seen = given.became_lame + given.became_sound + random.whole(1, 300);
  if (isColumn(given.label_days) && isColumn(given.basis)) {
    const { basis } = given;
    given.label_days = given.label_days.map((cell, row) =>
      basis[row] === "authorised" ? (typeof cell === "number" && cell > 0 ? cell : 28) : null,
    );
  }
}

const lesser = (cell: Cell, other: Cell | undefined): Cell =>
  typeof cell === "number" && typeof other === "number" ? Math.min(cell, other) : cell;
const greater = (cell: Cell, other: Cell | undefined): Cell =>
  typeof cell === "number" && typeof other === "number" ? Math.max(cell, other) : cell;
