import { CellValueType, getNumfmtParseValueFilter, InterceptorEffectEnum, isRealNum } from "@univerjs/core";
import { INTERCEPTOR_POINT, type SheetInterceptorService } from "@univerjs/preset-sheets-core";
import { remembered } from "./remembered.ts";

// Just before that which marks texts that could be numbers.
const justBefore = 10.5;

/**
 * Has each different text looked at once, whether it could be a number: the embedded spreadsheet reads every text of the
 * window as a date, a time and a number each time it draws, which is a third of what drawing takes.
 */
export function readTextsOnce(service: SheetInterceptorService): void {
  const isNoNumber = remembered((text) => !isRealNum(text) && !getNumfmtParseValueFilter(text));
  service.intercept(INTERCEPTOR_POINT.CELL_CONTENT, {
    priority: justBefore,
    effect: InterceptorEffectEnum.Style,
    handler(cell, { rawData }, next) {
      if (cell?.t !== CellValueType.STRING || typeof rawData?.v !== "string" || !isNoNumber(rawData.v))
        return next(cell);
      const shown = next({ ...cell, t: null });
      return shown && { ...shown, t: cell.t };
    },
  });
}
