import { CellValueType, numfmt } from "@univerjs/core";
import { BEFORE_CELL_EDIT, type SheetInterceptorService } from "@univerjs/preset-sheets-core";
import { showsDay } from "./showsDay.ts";

/**
 * Has a date edited as 2026-03-14, whatever the cell shows: from 03/04/2026 the date could not be had back when the
 * editor is closed.
 */
export function writeDatesOut({ writeCellInterceptor }: SheetInterceptorService): void {
  writeCellInterceptor.intercept(BEFORE_CELL_EDIT, {
    priority: 1,
    handler(cell, { origin, workbook }, next) {
      const pattern = workbook.getStyles().getStyleByCell(origin)?.n?.pattern;
      const isPlain = origin?.t === CellValueType.NUMBER && origin.f === undefined && origin.si === undefined;
      if (!cell || !isPlain || pattern === undefined || !showsDay(pattern)) return next(cell);
      const moment = Number(origin.v);
      const written = numfmt.format(Number.isInteger(moment) ? "yyyy-mm-dd" : "yyyy-mm-dd hh:mm:ss", moment);
      return next({ ...cell, v: written });
    },
  });
}
