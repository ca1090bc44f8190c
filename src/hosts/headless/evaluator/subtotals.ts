import { type Cell, isCellError } from "../../../cells/cell.ts";
import type { Calling, WorksheetFunction } from "./evaluateFormula.ts";
import { numberOf } from "./operators.ts";
import { errorOf, isGrid, isReference, type Value } from "./values.ts";

// The functions behind the numbers of SUBTOTAL and AGGREGATE (ECMA-376 part 1, 18.17.7.314 SUBTOTAL).
const byNumber = [
  "AVERAGE",
  "COUNT",
  "COUNTA",
  "MAX",
  "MIN",
  "PRODUCT",
  "STDEV.S",
  "STDEV.P",
  "SUM",
  "VAR.S",
  "VAR.P",
  "MEDIAN",
  "MODE.SNGL",
  "LARGE",
  "SMALL",
  "PERCENTILE.INC",
  "QUARTILE.INC",
  "PERCENTILE.EXC",
  "QUARTILE.EXC",
];

interface Leaving {
  readonly hidden: boolean;
  readonly errors: boolean;
  readonly subtotals: boolean;
}

/** Cells that hold a subtotal themselves, so that none is counted twice. */
export type IsSubtotal = (sheet: number, row: number, column: number) => boolean;

function cellsOf(value: Value | undefined, leaving: Leaving, isSubtotal: IsSubtotal, calling: Calling): Cell[] {
  const { store } = calling;
  if (!isReference(value)) {
    const content = calling.content(value);
    const cells = isGrid(content) ? content.grid.flat() : [content];
    return leaving.errors ? cells.filter((cell) => !isCellError(cell)) : cells;
  }
  return value.areas.flatMap((reference) => {
    const { sheet, area } = reference;
    store.watch?.(reference);
    const part = store.filledPart(reference);
    const { hidden, filtered } = store.sheets[sheet] ?? { hidden: new Set<number>(), filtered: new Set<number>() };
    store.spend((part.bottom - part.top + 1) * (part.right - part.left + 1));
    const cells: Cell[] = [];
    for (let row = area.top; row <= part.bottom; row += 1) {
      if (filtered.has(row) || (leaving.hidden && hidden.has(row))) continue;
      for (let column = part.left; column <= part.right; column += 1) {
        const cell = store.column(sheet, column)[row] ?? null;
        if (cell === null || (leaving.errors && isCellError(cell))) continue;
        if (leaving.subtotals && isSubtotal(sheet, row, column)) continue;
        cells.push(cell);
      }
    }
    return cells;
  });
}

function wholeNumber(value: Value | undefined, calling: Calling): number {
  const content = calling.content(value);
  const number = isGrid(content) || isCellError(content) ? undefined : numberOf(content, calling.toNumber);
  return number === undefined ? Number.NaN : Math.trunc(number);
}

/** SUBTOTAL and AGGREGATE: the same functions over the rows that can be seen. */
export function subtotals(isSubtotal: IsSubtotal): ReadonlyMap<string, WorksheetFunction> {
  const run = (name: string, cells: Cell[], others: readonly (Value | undefined)[], calling: Calling): Value => {
    const found = calling.library.find(name);
    return found ? found([{ grid: [cells.length === 0 ? [null] : cells] }, ...others], calling) : errorOf("#VALUE!");
  };
  return new Map<string, WorksheetFunction>([
    [
      "SUBTOTAL",
      ([number, ...ranges], calling) => {
        const wanted = wholeNumber(number, calling);
        const name = byNumber[(wanted > 100 ? wanted - 100 : wanted) - 1];
        if (name === undefined || wanted % 100 > 11) return errorOf("#VALUE!");
        const leaving = { hidden: wanted > 100, errors: false, subtotals: true };
        return run(
          name,
          ranges.flatMap((range) => cellsOf(range, leaving, isSubtotal, calling)),
          [],
          calling,
        );
      },
    ],
    [
      "AGGREGATE",
      ([number, option, ...given], calling) => {
        const [wanted, choice] = [wholeNumber(number, calling), wholeNumber(option, calling)];
        const name = byNumber[wanted - 1];
        if (name === undefined || !(choice >= 0 && choice <= 7)) return errorOf("#VALUE!");
        const leaving = {
          hidden: [1, 3, 5, 7].includes(choice),
          errors: [2, 3, 6, 7].includes(choice),
          subtotals: choice <= 3,
        };
        const ranges = wanted > 13 ? given.slice(0, 1) : given;
        return run(
          name,
          ranges.flatMap((range) => cellsOf(range, leaving, isSubtotal, calling)),
          wanted > 13 ? given.slice(1) : [],
          calling,
        );
      },
    ],
  ]);
}
