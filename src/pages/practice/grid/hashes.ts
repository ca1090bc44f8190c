import { CellValueType, type ICellData, type IStyleData, WrapStrategy } from "@univerjs/core";
import { getFontStyleString } from "@univerjs/preset-sheets-core";
import { type DrawnSheet, drawCellsAs } from "../../../hosts/headless/insides/drawCellsAs.ts";

// As far as the embedded spreadsheet keeps from both edges of a cell.
export const margins = 4;

/**
 * Shows #### where a number or a date is wider than its cell, as every spreadsheet does: the embedded one cuts it off, and
 * 12 Apr 2026 reads 12 Apr 20.
 */
export const showHashes = (): void => drawCellsAs(asFits);

function asFits(
  sheet: DrawnSheet,
  row: number,
  column: number,
  cell: ICellData,
  style: IStyleData | undefined,
): ICellData {
  if (cell?.t !== CellValueType.NUMBER || cell.v === undefined || cell.v === null || cell.p) return cell;
  if (style?.tb === WrapStrategy.WRAP && /[ -]/.test(String(cell.v))) return cell;
  if (sheet.getMergedCell(row, column)) return cell;
  const font = getFontStyleString(style).fontCache;
  const room = sheet.getColumnWidth(column) - margins;
  return widthOf(String(cell.v), font) <= room ? cell : { ...cell, v: fitting(cell.v, font, room) };
}

/** A number with fewer digits behind its point where that is all it takes; otherwise one # for each that fits. */
function fitting(value: NonNullable<ICellData["v"]>, font: string, room: number): string {
  if (typeof value === "number" && !Number.isInteger(value))
    for (let digits = 9; digits >= 0; digits -= 1) {
      const shorter = value.toFixed(digits);
      if (Number(shorter) !== 0 && widthOf(shorter, font) <= room) return shorter;
    }
  return "#".repeat(Math.max(1, Math.floor(room / widthOf("#", font))));
}

const widths = new Map<string, number>();
let pen: CanvasRenderingContext2D | null | undefined;

/** In pixels. */
export function widthOf(text: string, font: string): number {
  const key = `${font} ${text}`;
  const known = widths.get(key);
  if (known !== undefined) return known;
  pen ??= document.createElement("canvas").getContext("2d");
  if (!pen) return 0;
  pen.font = font;
  const { width } = pen.measureText(text);
  if (widths.size > 20_000) widths.clear();
  widths.set(key, width);
  return width;
}
