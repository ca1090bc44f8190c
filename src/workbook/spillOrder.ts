import { type Area, overlap, placeText } from "./address.ts";
import type { EngineAnswers } from "./engine.ts";
import { referencesIn, type SheetArea } from "./formula/referencesIn.ts";
import { quoteSheet } from "./formula/structured.ts";

/** A formula to be put in order, by its key in its sheet. */
export interface Ordered {
  readonly sheet: number;
  readonly key: number;
  readonly formula: string;
}

/**
 * For each formula that reads cells which another formula spills into: the cells of those formulas. The engine
 * orders formulas by the cells they name, and a cell spilled into names nobody, so that a spill which rests on
 * another spill was read before it was right (measured: 19 of 40 orders of one chain of spills gave a wrong value).
 *
 * @returns by sheet and key, references to the formulas that must go first; empty when the engine's own order is
 *   sound, which it is as long as the cells of no more than one spill are read
 */
export function spillOrder(
  formulas: Iterable<Ordered>,
  answers: EngineAnswers,
  sheetNames: readonly string[],
): ReadonlyMap<string, readonly string[]> {
  const spills = spillsOf(answers);
  if (spills.count < 2) return new Map();
  const sheetByName = new Map(sheetNames.map((name, place) => [name.toLowerCase(), place]));
  const order = new Map<string, string[]>();
  const read = new Set<Spill>();
  for (const { sheet, key, formula } of formulas) {
    const before = new Set(referencesIn(formula, sheet, sheetByName).flatMap((reference) => spills.under(reference)));
    const others = [...before].filter((spill) => spill.sheet !== sheet || spill.key !== key);
    if (others.length === 0) continue;
    for (const spill of others) read.add(spill);
    const cells = others.map(({ sheet: on, area }) => {
      const anchor = placeText({ row: area.top, column: area.left });
      return `${quoteSheet(sheetNames[on] ?? "")}${anchor}`;
    });
    order.set(orderKey(sheet, key), cells);
  }
  return read.size < 2 ? new Map() : order;
}

export const orderKey = (sheet: number, key: number): string => `${sheet}:${key}`;

interface Spill {
  readonly sheet: number;
  readonly key: number;
  readonly area: Area;
}

/** Spills by the rows they cover, so that a reference to a few cells is not held against all of them. */
function spillsOf({ sheets }: EngineAnswers): { count: number; under: (reference: SheetArea) => readonly Spill[] } {
  let count = 0;
  const bySheet = sheets.map((answers, sheet) => {
    const all: Spill[] = [];
    const byRow = new Map<number, Spill[]>();
    for (const [key, { spill }] of answers) {
      if (!spill) continue;
      const entry = { sheet, key, area: spill.area };
      all.push(entry);
      for (let row = spill.area.top; row <= spill.area.bottom; row += 1) {
        const list = byRow.get(row);
        if (list) list.push(entry);
        else byRow.set(row, [entry]);
      }
    }
    count += all.length;
    return { all, byRow };
  });
  return {
    count,
    under({ sheet, area }) {
      const { all, byRow } = bySheet[sheet] ?? { all: [], byRow: new Map<number, Spill[]>() };
      if (all.length === 0) return [];
      const height = area.bottom - area.top + 1;
      if (height > all.length) return all.filter((spill) => overlap(spill.area, area));
      const found: Spill[] = [];
      for (let row = area.top; row <= area.bottom; row += 1) {
        for (const spill of byRow.get(row) ?? []) if (overlap(spill.area, area)) found.push(spill);
      }
      return found;
    },
  };
}
