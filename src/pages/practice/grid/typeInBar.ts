import { DOCS_FORMULA_BAR_EDITOR_UNIT_ID_KEY, type Injector } from "@univerjs/core";
import { IEditorService } from "@univerjs/preset-sheets-core";
import { isTypedInto } from "./isTypedInto.ts";

// So many pictures long the embedded spreadsheet hands the keys back to the editor in the cell.
const frames = 3;

/**
 * One click into the line above the sheet is enough to type there. Of its own the embedded spreadsheet lets the editor in
 * the cell take the keys from it again at once, and what is typed then is in neither.
 */
export function typeInBar(holder: HTMLElement, injector: Injector): () => void {
  let waits = 0;
  const after = (left: number): void => {
    if (left > 0) {
      waits = requestAnimationFrame(() => after(left - 1));
      return;
    }
    const bar = injector.get(IEditorService).getEditor(DOCS_FORMULA_BAR_EDITOR_UNIT_ID_KEY);
    if (isTypedInto(injector) && !bar?.isFocus()) bar?.focus();
  };
  const follow = ({ target }: Event): void => {
    cancelAnimationFrame(waits);
    // Beside its text the line has the name of the cell and buttons.
    if (target instanceof HTMLCanvasElement && target.closest("[data-u-comp=formula-bar]")) after(frames);
  };
  holder.addEventListener("pointerup", follow);
  return () => {
    cancelAnimationFrame(waits);
    holder.removeEventListener("pointerup", follow);
  };
}
