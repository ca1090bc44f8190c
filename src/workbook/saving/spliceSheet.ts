import { placeText } from "../address.ts";
import type { Sheet, SheetCell, SheetRow } from "../model.ts";
import { type CellChange, cellElement } from "./cellChange.ts";
import { type Splice, splice } from "./splice.ts";

/** The sheet part with the changed cells exchanged; every other byte stays. */
export function spliceSheet(sheet: Sheet, changes: readonly CellChange[]): string {
  const byRow = new Map<number, CellChange[]>();
  for (const change of changes) {
    const row = byRow.get(change.row);
    if (row) row.push(change);
    else byRow.set(change.row, [change]);
  }
  const splices: Splice[] = [];
  let left = changes.length;
  for (const row of sheet.rows) {
    // Places that were only implied by what stands before them must be said once cells come and go.
    if (row.implied) splices.push(insertion(afterName(sheet.text, row.start), ` r="${row.row + 1}"`));
    const inRow = byRow.get(row.row) ?? none;
    left -= inRow.length;
    rowSplices(sheet, row, inRow, splices);
  }
  if (left > 0) {
    for (const { row } of sheet.rows) byRow.delete(row);
    for (const piece of newRows(sheet, byRow)) splices.push(piece);
  }
  return splice(sheet.text, splices);
}

const insertion = (at: number, text: string): Splice => ({ start: at, end: at, text });

function afterName(text: string, start: number): number {
  const end = /[\s/>]/g;
  end.lastIndex = start;
  return end.exec(text)?.index ?? text.length;
}

function rowSplices(sheet: Sheet, row: SheetRow, changes: readonly CellChange[], splices: Splice[]): void {
  const { text, prefix } = sheet;
  for (const change of changes) {
    const { old } = change;
    if (old) splices.push({ start: old.start, end: old.end, text: cellElement(change, text, prefix) });
  }
  if (row.cells.some(isImplied)) {
    const changed = new Set(changes.map(({ old }) => old));
    for (const cell of row.cells) {
      if (cell.implied && !changed.has(cell))
        splices.push(insertion(afterName(text, cell.start), ` r="${placeText(cell)}"`));
    }
  }
  if (changes.some(isAdded)) splices.push(...addedCells(sheet, row, changes.filter(isAdded)));
}

const none: readonly CellChange[] = [];
const isImplied = ({ implied }: SheetCell): boolean => implied === true;
const isAdded = ({ old }: CellChange): boolean => old === undefined;

function addedCells({ text, prefix }: Sheet, row: SheetRow, added: readonly CellChange[]): readonly Splice[] {
  const elements = [...added]
    .sort((one, other) => one.column - other.column)
    .map((change) => ({ column: change.column, element: cellElement(change, text, prefix) }));
  if (elements.length === 0) return [];
  if (row.inner === row.end) {
    const name = text.slice(row.start + 1, afterName(text, row.start));
    const cells = elements.map(({ element }) => element).join("");
    // Only its end, since the row may be given its number too.
    return [{ start: text.lastIndexOf("/", row.end - 1), end: row.end, text: `>${cells}</${name}>` }];
  }
  return elements.map(({ column, element }) => {
    const next = row.cells.find((cell) => cell.column > column);
    return insertion(next?.start ?? row.close, element);
  });
}

function newRows(sheet: Sheet, byRow: ReadonlyMap<number, readonly CellChange[]>): readonly Splice[] {
  const { text, prefix, data } = sheet;
  const elements = [...byRow]
    .sort(([one], [other]) => one - other)
    .map(([row, changes]) => {
      const sorted = [...changes].sort((one, other) => one.column - other.column);
      const cells = sorted.map((change) => cellElement(change, text, prefix)).join("");
      return { row, element: `<${prefix}row r="${row + 1}">${cells}</${prefix}row>` };
    });
  if (elements.length === 0) return [];
  if (data.inner === data.end) {
    const name = `${prefix}sheetData`;
    return [
      {
        start: data.start,
        end: data.end,
        text: `<${name}>${elements.map(({ element }) => element).join("")}</${name}>`,
      },
    ];
  }
  const rows = [...sheet.rows].sort((one, other) => one.row - other.row);
  let next = 0;
  return elements.map(({ row, element }) => {
    while ((rows[next]?.row ?? row) < row) next += 1;
    return insertion(rows[next]?.start ?? data.close, element);
  });
}
