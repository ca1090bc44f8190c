import { useEffect, useRef } from "preact/hooks";

/** Ctrl+S, on a Mac Cmd+S, saves the workbook, where the browser would save the page. */
export function useSaveKey(save: () => void): void {
  const now = useRef(save);
  now.current = save;
  useEffect(() => {
    const follow = (event: KeyboardEvent) => {
      if (event.key.toLowerCase() !== "s" || !(event.ctrlKey || event.metaKey) || event.altKey || event.shiftKey)
        return;
      event.preventDefault();
      event.stopPropagation();
      now.current();
    };
    addEventListener("keydown", follow, { capture: true });
    return () => removeEventListener("keydown", follow, { capture: true });
  }, []);
}
