import type { Cell } from "../../src/cells/cell.ts";
import { feet } from "../../src/core/words/footNames.ts";
import { lesions } from "../../src/core/words/lesionName.ts";
import { day, done, moment } from "../../src/reading/days.ts";
import { type CellKind, Refusal } from "../../src/reading/kind.ts";
import { wholeDays } from "../../src/reading/numbers.ts";
import { footList, lesion, soundnessWord, tag, yesNo } from "../../src/reading/words.ts";
import type { SeededRandom } from "../../src/workbooks/inventedFlock/seededRandom.ts";

/** The day on which the records of every generated call begin; shifts of a year keep them within what is accepted. */
export const firstRecord = 45_900;

const dayCell = (random: SeededRandom): number => firstRecord + random.whole(0, 120);

const byKind = new Map<CellKind<unknown>, (random: SeededRandom) => Cell>([
  [day, dayCell],
  [moment, (random) => dayCell(random) + (random.happens(0.3) ? random.whole(1, 95) / 96 : 0)],
  [done, (random) => (random.happens(0.5) ? dayCell(random) : random.pick(["yes", "no", true, false]))],
  [tag, (random) => `T${random.whole(1, 12)}`],
  [lesion, (random) => random.pick([...lesions, "scald?", "abcess", "scald + footrot"])],
  [footList, (random) => random.pick([...feet, "LF, RH", "all"])],
  [soundnessWord, (random) => random.pick(["lame", "treated", "sound", "recovered", "sold"])],
  [yesNo, (random) => random.pick([true, false, "yes", "n"])],
  [wholeDays, (random) => random.pick([0, 3, 7, 14, 28, random.whole(0, 60)])],
]);

/** Where any number of the kind would seldom fit the other arguments. */
const byName: Readonly<Record<string, (random: SeededRandom) => Cell>> = {
  mg_per_kg: (random) => random.pick([1, 2.5, 10, 20, 30]),
  mg_per_ml: (random) => random.pick([50, 100, 150, 200, 300]),
  mark_ml: (random) => random.pick([0.05, 0.1, 0.2, 0.25, 0.5, 1]),
  weight_kg: (random) => random.whole(20, 1200) / 10,
  weights_kg: (random) => random.whole(20, 1200) / 10,
  volume_ml: (random) => random.whole(2, 40) / 2,
  max_per_site_ml: (random) => random.whole(4, 20) / 2,
  sites: (random) => random.whole(1, 4),
  target_percent: (random) => random.whole(5, 40) / 10,
  product_percent: (random) => random.pick([100, 40, 37]),
  confidence: (random) => random.pick([0.5, 0.8, 0.9, 0.95, 0.99]),
  sensitivity: (random) => random.whole(60, 100) / 100,
  specificity: (random) => random.whole(80, 100) / 100,
  design_prevalence: (random) => random.whole(1, 30) / 100,
  weight: (random) => random.whole(1, 10) / 10,
  width: (random) => random.whole(1, 4),
  baseline_gathers: (random) => random.whole(1, 6),
  products: (random) => `product ${random.whole(1, 4)}`,
  basis: (random) => random.pick(["authorised", "zero period, same family", "not authorised for food animals"]),
};

/** A cell that the kind accepts. */
export function soundCell(name: string, kind: CellKind<unknown>, random: SeededRandom): Cell {
  const make = byName[name] ?? byKind.get(kind);
  if (make) return make(random);
  if (kind.words) return random.pick(kind.words);
  if (kind.holds === "text") return `group ${random.whole(1, 6)}`;
  for (let tries = 0; tries < 60; tries++) {
    const cell = tries % 2 === 0 ? random.whole(0, 120) : random.whole(1, 99) / 100;
    if (accepts(kind, cell)) return cell;
  }
  throw new Error(`no cell found for ${name}: ${kind.wanted}`);
}

export function accepts(kind: CellKind<unknown>, cell: Cell): boolean {
  try {
    kind.read(cell, { dayOffset: 0 });
    return true;
  } catch (error) {
    if (error instanceof Refusal) return false;
    throw error;
  }
}
