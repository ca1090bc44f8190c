import { DOCS_NORMAL_EDITOR_UNIT_ID_KEY } from "@univerjs/core";

interface KeysOnScreen {
  /** The selected cell is to be typed into. The browser lets the keys come only while it answers a tap. */
  readonly come: () => void;
  readonly stop: () => void;
}

/**
 * Keeps the keys away that a telephone draws over half of the sheet, while a finger only goes from cell to cell: of its own
 * the embedded spreadsheet asks for them with every cell that is selected. Once they are there, the next cell that is
 * tapped can be typed into as well.
 */
export function keysOnScreen(holder: HTMLElement, isTypedInto: () => boolean): KeysOnScreen {
  const field = () => holder.querySelector<HTMLElement>(`[id="__editor_${DOCS_NORMAL_EDITOR_UNIT_ID_KEY}"]`);
  const stayAway = ({ pointerType, target }: PointerEvent): void => {
    if (pointerType !== "touch" || isTypedInto()) return;
    // Whoever taps the line above the sheet is about to type there.
    if (target instanceof Element && target.closest("[data-u-comp=formula-bar]")) field()?.removeAttribute("inputmode");
    else field()?.setAttribute("inputmode", "none");
  };
  addEventListener("pointerdown", stayAway, { capture: true });
  return {
    come() {
      const typed = field();
      typed?.removeAttribute("inputmode");
      // A field where the caret is already is not asked again which keys it wants.
      typed?.blur();
      typed?.focus();
    },
    stop: () => removeEventListener("pointerdown", stayAway, { capture: true }),
  };
}
