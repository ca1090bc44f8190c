import { type Injector, IUniverInstanceService, type Workbook } from "@univerjs/core";
import { getViewportByCell, IRenderManagerService, SheetSkeletonManagerService } from "@univerjs/preset-sheets-core";

/** Where something of the sheet is in the window, in CSS pixels. */
export interface Box {
  readonly left: number;
  readonly top: number;
  readonly width: number;
  readonly height: number;
}

export interface ShownCell {
  readonly cell: Box;
  /** The part of the sheet that it moves in, beside and below frozen headings. */
  readonly pane: Box;
  /** Moves that part, in pixels to the right and down. */
  readonly scroll: (right: number, down: number) => void;
  /** How far that part is moved already. */
  readonly scrolled: () => { readonly right: number; readonly down: number };
}

/** Where a cell of the sheet in view is; undefined before the sheet is drawn. */
export function cellBox(injector: Injector, unitId: string, row: number, column: number): ShownCell | undefined {
  const render = injector.get(IRenderManagerService).getRenderById(unitId);
  const skeleton = render?.with(SheetSkeletonManagerService).getCurrentSkeleton();
  const worksheet = injector.get(IUniverInstanceService).getUnit<Workbook>(unitId)?.getActiveSheet();
  const canvas = render?.engine.getCanvasElement();
  if (!render || !skeleton || !worksheet || !canvas) return undefined;
  const pane = getViewportByCell(row, column, render.scene, worksheet);
  const main = getViewportByCell(Number.MAX_SAFE_INTEGER, Number.MAX_SAFE_INTEGER, render.scene, worksheet);
  if (!pane || !main) return undefined;
  const found = skeleton.getCellWithCoordByIndex(row, column);
  const { startX, startY, endX, endY } = found.isMerged || found.isMergedMainCell ? found.mergeInfo : found;
  const { left, top } = canvas.getBoundingClientRect();
  return {
    cell: {
      left: startX - pane.viewportScrollX + left,
      top: startY - pane.viewportScrollY + top,
      width: endX - startX,
      height: endY - startY,
    },
    pane: { left: pane.left + left, top: pane.top + top, width: pane.width ?? 0, height: pane.height ?? 0 },
    scroll: (right, down) =>
      main.scrollToViewportPos({
        viewportScrollX: main.viewportScrollX + right,
        viewportScrollY: main.viewportScrollY + down,
      }),
    scrolled: () => ({ right: main.viewportScrollX, down: main.viewportScrollY }),
  };
}

/** Whether the upper left corner of a cell can be seen. */
export const isInSight = ({ cell, pane }: ShownCell): boolean =>
  cell.left >= pane.left &&
  cell.top >= pane.top &&
  cell.top < pane.top + pane.height &&
  cell.left < pane.left + pane.width;
