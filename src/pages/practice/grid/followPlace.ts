import { IRenderManagerService } from "@univerjs/preset-sheets-core";
import type { GridBook } from "./gridBook.ts";

export interface FollowedPlace {
  /** Another workbook is shown, in an element of its own. */
  readonly start: () => void;
  readonly stop: () => void;
}

/** Tells when the sheet lies elsewhere in the window or is of another size: the page was scrolled, or a part of it grew. */
export function followPlace({ injector, unit }: GridBook, onMoved: () => void): FollowedPlace {
  let waits = 0;
  const soon = (): void => {
    cancelAnimationFrame(waits);
    waits = requestAnimationFrame(onMoved);
  };
  const sizes = new ResizeObserver(soon);
  sizes.observe(document.body);
  addEventListener("scroll", soon, { passive: true });
  return {
    start() {
      // It is drawn in its new size some time after it has it.
      injector.get(IRenderManagerService).getRenderById(unit())?.engine.onTransformChange$.subscribeEvent(soon);
    },
    stop() {
      cancelAnimationFrame(waits);
      sizes.disconnect();
      removeEventListener("scroll", soon);
    },
  };
}
