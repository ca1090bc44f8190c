import type { ICellData, IRange, Nullable } from "@univerjs/core";
import type { IFormulaCurrentConfigService, IFormulaRuntimeService } from "@univerjs/engine-formula";
import { type FilledAreas, isInArea } from "../filledAreas.ts";
import type { UniverParts } from "../univerParts.ts";

interface Runtime {
  _checkIfArrayFormulaRangeHasData: (unit: string, sheet: string, row: number, column: number, area: IRange) => boolean;
  _getRuntimeFeatureCellValue: (row: number, column: number, sheet: string, unit: string) => Nullable<ICellData>;
  readonly _runtimeFeatureCellData: object;
  readonly _currentConfigService: IFormulaCurrentConfigService;
  readonly getUnitData: IFormulaRuntimeService["getUnitData"];
}

/**
 * Whether the cells that a formula is to fill are free. The engine's own way goes through all areas that are filled for
 * each of the cells: a second for twenty columns of 5,000 rows.
 */
export function roomForArrays({ core }: UniverParts, service: object): void {
  const holds = (cell: Nullable<ICellData>): boolean => !core.isNullCell(cell);
  const runtime = service as Runtime;
  runtime._checkIfArrayFormulaRangeHasData = (unit, sheet, row, column, area) => {
    const config = runtime._currentConfigService;
    const areas = (config.getArrayFormulaRange()[unit]?.[sheet] ?? {}) as FilledAreas;
    const now = runtime.getUnitData()[unit]?.[sheet];
    const earlier = config.getArrayFormulaCellData()[unit]?.[sheet];
    const typed = config.getUnitData()[unit]?.[sheet]?.cellData;
    const before = areas[row]?.[column] ?? undefined;
    const hasFeatures = Object.keys(runtime._runtimeFeatureCellData).length > 0;
    for (const [otherRow, line] of Object.entries(areas))
      for (const [otherColumn, other] of Object.entries(line ?? {})) {
        const isOwn = Number(otherRow) === row && Number(otherColumn) === column;
        if (isOwn || !other || !meetBeside(area, other, row, column)) continue;
        if (now?.getValue(Number(otherRow), Number(otherColumn))?.v !== "#SPILL!") return true;
      }
    for (let at = area.startRow; at <= area.endRow; at += 1)
      for (let across = area.startColumn; across <= area.endColumn; across += 1) {
        if (at === row && across === column) continue;
        if (holds(now?.getValue(at, across))) return true;
        if (hasFeatures && holds(runtime._getRuntimeFeatureCellValue(at, across, sheet, unit))) return true;
        const cell = typed?.getValue(at, across);
        if (!holds(cell)) continue;
        const filled = earlier?.getValue(at, across);
        const isItsOwn = filled?.v !== undefined && before !== undefined && isInArea(before, at, across);
        if (!isItsOwn || cell?.v !== filled?.v || cell?.t !== filled?.t) return true;
      }
    return false;
  };
}

/** Whether two areas have a cell in common beside the one in which the formula stands. */
function meetBeside(one: IRange, other: IRange, row: number, column: number): boolean {
  const [top, bottom] = [Math.max(one.startRow, other.startRow), Math.min(one.endRow, other.endRow)];
  const [left, right] = [Math.max(one.startColumn, other.startColumn), Math.min(one.endColumn, other.endColumn)];
  if (top > bottom || left > right) return false;
  return top < bottom || left < right || top !== row || left !== column;
}
