import type { ICellData, IWorkbookData } from "@univerjs/core";
import type { Cell } from "../../../cells/cell.ts";
import { cellFromData } from "../../../hosts/headless/valueCells.ts";
import type { Place } from "../../../workbook/address.ts";
import { sameValue } from "../../../workbook/saving/cellChange.ts";
import type { Edit } from "../../../workbook/saving/writeEdits.ts";
import { isForOneCell } from "./isForOneCell.ts";
import { sheetPlace } from "./sheetId.ts";

type Cells = NonNullable<NonNullable<IWorkbookData["sheets"][string]>["cellData"]>;

/** The workbook's cells as they are now. */
export interface Now {
  readonly data: Pick<IWorkbookData, "sheets" | "styles">;
  /** The formula of a cell; formulas that were filled down share one text. */
  readonly formula: (sheetId: string, row: number, column: number) => string | undefined;
  /** A formula of a cell as its file holds it, without `=`. */
  readonly stored: (formula: string, sheet: number, at: Place) => string;
}

/** What has been typed since the workbook was opened, by comparison with how it was laid out then. */
export function editsIn(opened: Pick<IWorkbookData, "sheets" | "styles">, now: Now): readonly Edit[] {
  return Object.entries(now.data.sheets).flatMap(([id, data]) => {
    const before: Cells = opened.sheets[id]?.cellData ?? {};
    const after: Cells = data?.cellData ?? {};
    const rows = new Set([...Object.keys(before), ...Object.keys(after)].map(Number));
    return [...rows].flatMap((row) => {
      const columns = new Set([...Object.keys(before[row] ?? {}), ...Object.keys(after[row] ?? {})].map(Number));
      return [...columns].flatMap((column): Edit[] => {
        const sheet = sheetPlace(id);
        const stored = (formula: string): string => now.stored(formula, sheet, { row, column });
        const edit = editOf(before[row]?.[column], after[row]?.[column], now.formula(id, row, column), stored);
        if (!edit) return [];
        const format = patternOf(after[row]?.[column], now.data.styles);
        return [{ sheet, row, column, ...edit, ...(format === undefined ? {} : { format }) }];
      });
    });
  });
}

function editOf(
  before: ICellData | undefined,
  after: ICellData | undefined,
  formula: string | undefined,
  stored: (formula: string) => string,
): Pick<Edit, "value" | "formula" | "array"> | undefined {
  if (formula !== undefined) {
    if (formula === before?.f) return undefined;
    const text = stored(formula);
    return { value: null, formula: text, array: !isForOneCell(text) };
  }
  const value = typedValue(after);
  if (before?.f === undefined && sameValue(cellFromData(before), value)) return undefined;
  return { value };
}

// Where an array formula has lost its room, the spreadsheet leaves empty texts, without what marks one that is meant.
const typedValue = (cell: ICellData | undefined): Cell => (cell?.v === "" && !cell.p ? null : cellFromData(cell));

function patternOf(cell: ICellData | undefined, styles: IWorkbookData["styles"]): string | undefined {
  const style = typeof cell?.s === "string" ? styles[cell.s] : cell?.s;
  return style?.n?.pattern;
}
