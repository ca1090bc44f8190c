import type { RefObject } from "preact";
import { useEffect } from "preact/hooks";

interface Undoing {
  readonly holder: RefObject<HTMLElement | null>;
  readonly undo: () => void;
  readonly redo: () => void;
}

/**
 * Ctrl+Z takes back what was done in the sheet, and Ctrl+Y or Ctrl+Shift+Z does it again, wherever the keys go: of its own
 * the spreadsheet hears the first two only while it has them. In a field beside it they are the field's.
 */
export function useUndoKey({ holder, undo, redo }: Undoing): void {
  // biome-ignore lint/correctness/useExhaustiveDependencies: what is handed in reads what is there at the time
  useEffect(() => {
    const follow = (event: KeyboardEvent) => {
      if (!(event.ctrlKey || event.metaKey) || event.altKey || document.querySelector("dialog[open]")) return;
      const key = event.key.toLowerCase();
      const isRedo = key === "z" ? event.shiftKey : key === "y" && !event.shiftKey;
      if (key !== "z" && !isRedo) return;
      const active = document.activeElement;
      if (holder.current?.contains(active) ? key !== "z" || !isRedo : isField(active)) return;
      event.preventDefault();
      event.stopPropagation();
      if (isRedo) redo();
      else undo();
    };
    addEventListener("keydown", follow, { capture: true });
    return () => removeEventListener("keydown", follow, { capture: true });
  }, []);
}

const isField = (element: Element | null): boolean =>
  element instanceof HTMLElement && (element.isContentEditable || /^(?:INPUT|TEXTAREA|SELECT)$/.test(element.tagName));
