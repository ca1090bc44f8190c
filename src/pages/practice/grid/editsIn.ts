import type { ICellData, IWorkbookData } from "@univerjs/core";
import { cellFromData } from "../../../hosts/headless/valueCells.ts";
import { sameValue } from "../../../workbook/saving/cellChange.ts";
import type { Edit } from "../../../workbook/saving/writeEdits.ts";
import { sheetPlace } from "./sheetId.ts";

type Cells = NonNullable<NonNullable<IWorkbookData["sheets"][string]>["cellData"]>;

/** The workbook's cells as they are now. */
export interface Now {
  readonly data: Pick<IWorkbookData, "sheets" | "styles">;
  /** The formula of a cell; formulas that were filled down share one text. */
  readonly formula: (sheetId: string, row: number, column: number) => string | undefined;
}

/** What has been typed since the workbook was opened, by comparison with how it was laid out then. */
export function editsIn(opened: Pick<IWorkbookData, "sheets" | "styles">, now: Now): readonly Edit[] {
  return Object.entries(now.data.sheets).flatMap(([id, sheet]) => {
    const before: Cells = opened.sheets[id]?.cellData ?? {};
    const after: Cells = sheet?.cellData ?? {};
    const rows = new Set([...Object.keys(before), ...Object.keys(after)].map(Number));
    return [...rows].flatMap((row) => {
      const columns = new Set([...Object.keys(before[row] ?? {}), ...Object.keys(after[row] ?? {})].map(Number));
      return [...columns].flatMap((column): Edit[] => {
        const edit = editOf(before[row]?.[column], after[row]?.[column], now.formula(id, row, column));
        if (!edit) return [];
        const format = patternOf(after[row]?.[column], now.data.styles);
        return [{ sheet: sheetPlace(id), row, column, ...edit, ...(format === undefined ? {} : { format }) }];
      });
    });
  });
}

function editOf(
  before: ICellData | undefined,
  after: ICellData | undefined,
  formula: string | undefined,
): Pick<Edit, "value" | "formula"> | undefined {
  if (formula !== undefined) return formula === before?.f ? undefined : { value: null, formula: formula.slice(1) };
  const value = cellFromData(after);
  if (before?.f === undefined && sameValue(cellFromData(before), value)) return undefined;
  return { value };
}

function patternOf(cell: ICellData | undefined, styles: IWorkbookData["styles"]): string | undefined {
  const style = typeof cell?.s === "string" ? styles[cell.s] : cell?.s;
  return style?.n?.pattern;
}
