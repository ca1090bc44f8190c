import { nothingToReport, Problem } from "../../cells/problem.ts";
import type { Interval } from "../statistics/interval.ts";
import { normalScore } from "../statistics/normalScore.ts";
import { sumOf } from "../statistics/sumOf.ts";
import { wilsonLimits } from "../statistics/wilsonLimits.ts";
import { nameKey } from "../words/nameKey.ts";

export interface Agreement extends Interval {
  readonly measure: "agreed" | "kappa" | "AC1";
  readonly value: number;
}

/**
 * How far two lookers agree about the same sheep: the share on which they do, Cohen's kappa and Gwet's AC1.
 *
 * Both measures set the agreement against what chance would bring. Kappa takes each looker's own habit for chance, and falls
 * where nearly all sheep are sound; AC1 does not. Their ranges are by the delta method on the table with four sheep more,
 * spread evenly over it: without them two lookers who agree about every sheep seen would be in doubt about none.
 *
 * @param first what the first looker says of each sheep; names that differ only in capitals or spaces are one
 * @param second the same of the second, the same rows
 * @param confidence 0 < confidence < 1
 * @returns three measures, each with its range
 * @throws Problem when the columns differ in height; #N/A without a sheep, or when all are given one and the same name, which
 *   leaves nothing for two lookers to tell apart
 * @source Cohen 1960, Educ Psychol Meas 20:37; Fleiss, Cohen & Everitt 1969, Psychol Bull 72:323; Gwet 2008, Br J Math Stat
 *   Psychol 61:29; four more as in Agresti & Coull 1998, Am Stat 52:119
 * @example
 * lookAgreement(["lame", "lame", "sound", "sound"], ["lame", "sound", "sound", "sound"], 0.95).map(({ value }) => value)
 * // → [0.75, 0.5, 0.5294117647…]
 */
export function lookAgreement(
  first: readonly string[],
  second: readonly string[],
  confidence: number,
): readonly Agreement[] {
  if (first.length !== second.length) {
    throw new Problem(`second has ${second.length} rows and first has ${first.length}; give both the same rows`, {
      argument: "second",
    });
  }
  if (first.length === 0) throw nothingToReport("no sheep was looked at by both", { argument: "first" });
  const table = crossed(first, second);
  if (table.length === 1) {
    throw nothingToReport(
      "both lookers give every sheep the same one name, so nothing shows whether they would agree on another",
      { argument: "first" },
    );
  }
  const z = normalScore(confidence);
  const agreed = sumOf(table.map((row, index) => row[index] ?? 0));
  const more = 4 / (table.length * table.length);
  const padded = table.map((row) => row.map((count) => count + more));
  const measured = (measure: "kappa" | "AC1", chanceOf: typeof byHabit): Agreement => {
    const { value } = overChance(table, chanceOf);
    const near = overChance(padded, chanceOf);
    const reach = z * Math.sqrt(near.variance);
    const [low, high] = [Math.min(near.value - reach, value), Math.max(near.value + reach, value)];
    return { measure, value, low: Math.max(low, -1), high: Math.min(high, 1) };
  };
  return [
    { measure: "agreed", value: agreed / first.length, ...wilsonLimits(agreed, first.length, z) },
    measured("kappa", byHabit),
    measured("AC1", byMixture),
  ];
}

type Table = readonly (readonly number[])[];

function crossed(first: readonly string[], second: readonly string[]): Table {
  const places = new Map<string, number>();
  for (const name of [...first, ...second]) if (!places.has(nameKey(name))) places.set(nameKey(name), places.size);
  const table = Array.from({ length: places.size }, () => new Array<number>(places.size).fill(0));
  first.forEach((name, sheep) => {
    const row = table[places.get(nameKey(name)) as number] as number[];
    const column = places.get(nameKey(second[sheep] as string)) as number;
    row[column] = (row[column] as number) + 1;
  });
  return table;
}

/** The agreement by chance, and how it changes with the share in each cell of the table. */
interface Chance {
  readonly chance: number;
  readonly slope: (row: number, column: number) => number;
}

/** Cohen: each looker uses each name as often as they did. */
function byHabit(rows: readonly number[], columns: readonly number[]): Chance {
  return {
    chance: sumOf(rows.map((share, index) => share * (columns[index] ?? 0))),
    slope: (row, column) => (columns[row] ?? 0) + (rows[column] ?? 0),
  };
}

/** Gwet: a name is open to chance the more, the nearer it is to being used for half. */
function byMixture(rows: readonly number[], columns: readonly number[]): Chance {
  const shares = rows.map((share, index) => (share + (columns[index] ?? 0)) / 2);
  const others = shares.length - 1;
  return {
    chance: sumOf(shares.map((share) => share * (1 - share))) / others,
    slope: (row, column) => (1 - (shares[row] ?? 0) - (shares[column] ?? 0)) / others,
  };
}

/** (agreed − chance) / (1 − chance), with its variance by the delta method. */
function overChance(table: Table, chanceOf: typeof byHabit) {
  const all = sumOf(table.map(sumOf));
  const rows = table.map((row) => sumOf(row) / all);
  const columns = rows.map((_, index) => sumOf(table.map((row) => row[index] ?? 0)) / all);
  const agreed = sumOf(table.map((row, index) => row[index] ?? 0)) / all;
  const { chance, slope } = chanceOf(rows, columns);
  const room = 1 - chance;
  let [mean, square] = [0, 0];
  table.forEach((line, row) => {
    line.forEach((count, column) => {
      const by = (row === column ? 1 : 0) / room - ((1 - agreed) * slope(row, column)) / (room * room);
      mean += (count / all) * by;
      square += (count / all) * by * by;
    });
  });
  return { value: (agreed - chance) / room, variance: Math.max(square - mean * mean, 0) / all };
}
