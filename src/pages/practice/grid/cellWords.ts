import { namespace } from "../../../definition/formulaText.ts";
import { placeText } from "../../../workbook/address.ts";
import { formulaHint } from "../../parts/explain/formulaHint.ts";
import type { BookRules } from "./bookRules.ts";
import { cellBox } from "./cellBox.ts";
import type { CellAt, GridBook } from "./gridBook.ts";
import type { Pointed, Selected } from "./gridEvents.ts";

/** What is to be said of a cell. */
export interface CellWords {
  /** Of a formula that came to an error: a misspelling before what a function makes of it. */
  readonly messageAt: (cell: CellAt) => string | undefined;
  /** Of the selected cell; undefined before there is one. */
  readonly selected: () => Selected | undefined;
  /** Of the cell under the pointer; undefined where nothing is to be said. */
  readonly pointedAt: (cell: CellAt) => Pointed | undefined;
  /** Another workbook is open. */
  readonly start: () => void;
}

const isError = (shown: string): boolean => shown.startsWith("#");

/** @param names - those of the worksheet functions, without `FOOT.` */
export function cellWords(book: GridBook, rules: BookRules, names: readonly string[]): CellWords {
  const { api, ears, formulaAt } = book;
  const asked = new Set<string>();
  const cellIn = ({ sheet, row, column }: CellAt) =>
    api.getActiveWorkbook()?.getSheetBySheetId(sheet)?.getRange(row, column);

  // Cells of an opened workbook hold their errors without a sentence: such a cell is worked out once more when looked at.
  const askAgain = (cell: CellAt, shown: string): void => {
    const { sheet, row, column } = cell;
    const isOurs = isError(shown) && formulaAt(cell)?.includes(`${namespace}.`);
    const key = `${sheet} ${row} ${column}`;
    if (!isOurs || asked.has(key) || ears.message(sheet, row, column) !== undefined) return;
    asked.add(key);
    const range = { startRow: row, endRow: row, startColumn: column, endColumn: column };
    void book.commands.executeCommand("formula.mutation.set-trigger-formula-calculation-start", {
      dirtyRanges: [{ unitId: book.unit(), sheetId: sheet, range }],
    });
  };

  const messageAt = (cell: CellAt): string | undefined => {
    const formula = formulaAt(cell);
    const shown = formula && cellIn(cell)?.getDisplayValue();
    const hint = formula && String(shown).startsWith("#") ? formulaHint(formula, names) : undefined;
    return hint ?? ears.message(cell.sheet, cell.row, cell.column);
  };

  return {
    messageAt,
    selected() {
      const at = book.selected();
      const cell = at && cellIn(at);
      if (!at || !cell || !book.opened()) return undefined;
      const formula = formulaAt(at);
      const value = formula === undefined ? cell.getRawValue() : undefined;
      const shown = cell.getDisplayValue() ?? "";
      askAgain(at, shown);
      // What a function said whose error another keeps from the cell is no fault of the cell; Explain says it.
      const message = isError(shown) ? messageAt(at) : undefined;
      const doubt = rules.doubtIn(value, at);
      return {
        sheet: book.sheetName(at.sheet),
        address: placeText(at),
        shown,
        formula,
        message,
        sentence: message ?? doubt,
        wanted: doubt ?? rules.wantedAt(at),
        choices: rules.choicesAt(at) ?? [],
        link: rules.linkIn(at),
      };
    },
    pointedAt(at) {
      const formula = formulaAt(at);
      const message = formula && isError(cellIn(at)?.getDisplayValue() ?? "") ? messageAt(at) : undefined;
      const doubt = formula === undefined ? rules.doubtIn(cellIn(at)?.getRawValue(), at) : undefined;
      const sentence = message ?? doubt;
      const shown = sentence === undefined ? undefined : cellBox(book.injector, book.unit(), at.row, at.column);
      return shown && sentence !== undefined ? { cell: shown.cell, sentence } : undefined;
    },
    start: () => asked.clear(),
  };
}
