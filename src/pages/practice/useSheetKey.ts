import type { RefObject } from "preact";
import { useEffect } from "preact/hooks";

const key = "F6";

/** F6 leads out of the sheet, where Tab goes from cell to cell, and back into it. */
export function useSheetKey(
  holder: RefObject<HTMLElement | null>,
  panel: RefObject<HTMLElement | null>,
  intoSheet: () => void,
): void {
  // biome-ignore lint/correctness/useExhaustiveDependencies: what is handed in reads what is there at the time
  useEffect(() => {
    const follow = (event: KeyboardEvent) => {
      if (event.key !== key || event.altKey || event.ctrlKey || event.metaKey) return;
      // The browser's own place for this key is its address bar, and the embedded spreadsheet is not asked.
      event.preventDefault();
      event.stopPropagation();
      if (holder.current?.contains(document.activeElement))
        panel.current?.querySelector<HTMLElement>('[aria-pressed="true"]')?.focus();
      else intoSheet();
    };
    addEventListener("keydown", follow, { capture: true });
    return () => removeEventListener("keydown", follow, { capture: true });
  }, []);
}
