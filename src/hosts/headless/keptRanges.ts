import type { Cells } from "../../cells/cell.ts";

interface KeptRanges {
  readonly get: (name: string) => Cells | undefined;
  readonly keep: (name: string, range: Cells) => void;
}

/**
 * Ranges as they were read, to be shared by the formulas that read the same ones. A formula that is filled down over
 * `B$2:B2` reads another range in every row, so that all of them together grow with the square of the rows.
 *
 * @param mostCells - once more cells than this are kept, the ranges that were not asked for longest are let go
 */
export function keptRanges(mostCells: number): KeptRanges {
  const kept = new Map<string, Cells>();
  let cells = 0;
  return {
    get(name) {
      const range = kept.get(name);
      if (range === undefined) return undefined;
      // Taken out and put back, it is the last in the map's order.
      kept.delete(name);
      kept.set(name, range);
      return range;
    },
    keep(name, range) {
      kept.set(name, range);
      cells += cellsIn(range);
      for (const [oldest, other] of kept) {
        if (cells <= mostCells || oldest === name) return;
        kept.delete(oldest);
        cells -= cellsIn(other);
      }
    },
  };
}

const cellsIn = (range: Cells): number => range.length * (range[0]?.length ?? 0);
