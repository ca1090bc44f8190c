import { outsideTheCone } from "./coneByHand.ts";
import { type StoredCell, type StoredWorkbook, storedWorkbook } from "./storedCells.ts";

/** What became of the cells outside the cone of FOOT when a file was worked out. */
export interface Outside {
  /** Cells and formulas outside, and formulas inside. */
  readonly cells: number;
  readonly formulas: number;
  readonly inside: number;
  /** Of the formulas inside, those whose bytes are others now. */
  readonly renewed: number;
  /** Each cell outside that was added, lost or changed, with its bytes before and after. */
  readonly changed: readonly string[];
}

/** Looks at every cell of two files, one worked out from the other. */
export function changedOutside(before: Uint8Array, after: Uint8Array): Outside {
  const [old, now] = [storedWorkbook(before), storedWorkbook(after)];
  const outside = outsideTheCone(old, now);
  const changed: string[] = [];
  let [cells, formulas, inside, renewed] = [0, 0, 0, 0];
  old.sheets.forEach((sheet, at) => {
    const other = now.sheets[at]?.cells ?? new Map<string, StoredCell>();
    for (const address of outside[at] ?? []) {
      const [one, two] = [sheet.cells.get(address), other.get(address)];
      cells += 1;
      if (one?.formula !== undefined) formulas += 1;
      if (!isSame(one, two)) changed.push(`${sheet.name}!${address}: ${one?.xml} became ${two?.xml}`);
    }
    for (const [address, { formula, xml }] of sheet.cells) {
      if (formula === undefined || outside[at]?.has(address)) continue;
      inside += 1;
      if (other.get(address)?.xml !== xml) renewed += 1;
    }
  });
  return { cells, formulas, inside, renewed, changed };
}

/** A formula that was shared with one inside the cone may be written out; its value and its meaning may not change. */
const isSame = (one: StoredCell | undefined, two: StoredCell | undefined): boolean =>
  one?.xml === two?.xml ||
  (one !== undefined &&
    two !== undefined &&
    one.shared &&
    one.formula === two.formula &&
    one.besideFormula === two.besideFormula);

/** The formulas outside the cone, as sheet and address. */
export function formulasOutside(book: StoredWorkbook): readonly (readonly [number, string])[] {
  return outsideTheCone(book, book).flatMap((addresses, sheet) =>
    [...addresses].flatMap((address) =>
      book.sheets[sheet]?.cells.get(address)?.formula === undefined ? [] : [[sheet, address] as const],
    ),
  );
}
