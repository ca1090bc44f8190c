import type { RefObject } from "preact";
import { useEffect } from "preact/hooks";

interface Parts {
  readonly header: RefObject<HTMLElement | null>;
  readonly holder: RefObject<HTMLElement | null>;
  readonly panel: RefObject<HTMLElement | null>;
  readonly intoSheet: () => void;
  /** Brings the sheet so many places further on into view, or back. */
  readonly toSheet: (further: number) => void;
  /** Goes to the first cell of the row, or of the sheet; false where a cell is being typed into. */
  readonly toFirst: (of: "row" | "sheet") => boolean;
}

/**
 * F6 goes round through the parts of the page, header, sheet, tabs and panel, and Shift+F6 the other way; in the sheet Tab
 * goes from cell to cell. Ctrl+PageDown and Ctrl+PageUp bring the next sheet and the one before; Home leads to the first
 * cell of the row, and Ctrl+Home to that of the sheet.
 */
export function useSheetKey({ header, holder, panel, intoSheet, toSheet, toFirst }: Parts): void {
  // biome-ignore lint/correctness/useExhaustiveDependencies: what is handed in reads what is there at the time
  useEffect(() => {
    const tabs = () => holder.current?.querySelector<HTMLElement>("[role=tablist]");
    const panelStop = {
      has: () => panel.current?.contains(document.activeElement) ?? false,
      enter: () => panel.current?.querySelector<HTMLElement>('[aria-pressed="true"]')?.focus(),
    };
    const stops: readonly { readonly has: () => boolean; readonly enter: () => void }[] = [
      {
        has: () => header.current?.contains(document.activeElement) ?? false,
        enter: () => header.current?.querySelector<HTMLElement>("button")?.focus(),
      },
      { has: () => holder.current?.contains(document.activeElement) ?? false, enter: intoSheet },
      {
        has: () => tabs()?.contains(document.activeElement) ?? false,
        enter: () => tabs()?.querySelector<HTMLElement>('[role=tab][tabindex="0"]')?.focus(),
      },
      panelStop,
    ];
    const sheetPart = 1;
    const isInCells = (): boolean => stops.findLastIndex(({ has }) => has()) === sheetPart && !isField();
    const follow = (event: KeyboardEvent) => {
      if (document.querySelector("dialog[open]")) return;
      const turn = turnOf(event);
      if (turn !== undefined && event.ctrlKey && !event.altKey && !event.metaKey && !event.shiftKey) toSheet(turn);
      else if (event.key === "F6" && !event.altKey && !event.ctrlKey && !event.metaKey) {
        // The tabs are a part of the sheet's own element, so they are looked for first.
        const at = stops.findLastIndex(({ has }) => has());
        const further = event.shiftKey ? stops.length - 1 : 1;
        const isGone = (place: number): boolean => stops[place] === panelStop && panel.current?.hidden !== false;
        let next = at < 0 ? sheetPart : (at + further) % stops.length;
        if (isGone(next)) next = (next + further) % stops.length;
        stops[next]?.enter();
      } else if (event.key !== "Home" || !isInCells() || isChanged(event) || !toFirst(event.ctrlKey ? "sheet" : "row"))
        return;
      // The browser's own place for these keys is its address bar and its tabs.
      event.preventDefault();
      event.stopPropagation();
    };
    addEventListener("keydown", follow, { capture: true });
    return () => removeEventListener("keydown", follow, { capture: true });
  }, []);
}

const isField = (): boolean => document.activeElement instanceof HTMLInputElement;

const isChanged = ({ altKey, metaKey, shiftKey }: KeyboardEvent): boolean => altKey || metaKey || shiftKey;

const turnOf = ({ key }: KeyboardEvent): number | undefined =>
  key === "PageDown" ? 1 : key === "PageUp" ? -1 : undefined;
