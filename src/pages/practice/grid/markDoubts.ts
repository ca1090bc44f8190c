import { type ICellData, InterceptorEffectEnum } from "@univerjs/core";
import { INTERCEPTOR_POINT, type SheetInterceptorService } from "@univerjs/preset-sheets-core";

interface At {
  readonly subUnitId: string;
  readonly row: number;
  readonly col: number;
}

// Seen on the light ground and on the dark one.
const mark = { tr: { size: 9, color: "#c97f00" } };

/**
 * Marks cells whose content is doubtful with a corner.
 *
 * @param doubt - what is doubtful about a content that was typed, if anything
 */
export function markDoubts(
  service: SheetInterceptorService,
  doubt: (value: ICellData["v"], at: At) => string | undefined,
): void {
  service.intercept(INTERCEPTOR_POINT.CELL_CONTENT, {
    priority: 1,
    effect: InterceptorEffectEnum.Style,
    handler(cell, location, next) {
      const raw = location.rawData;
      if (!raw || raw.f || raw.si || doubt(raw.v, location) === undefined) return next(cell);
      return next({ ...cell, markers: { ...cell?.markers, ...mark } });
    },
  });
}
