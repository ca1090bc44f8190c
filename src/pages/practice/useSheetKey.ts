import type { RefObject } from "preact";
import { useEffect } from "preact/hooks";
import type { Leap } from "./grid/leapFrom.ts";

interface Parts {
  readonly header: RefObject<HTMLElement | null>;
  readonly holder: RefObject<HTMLElement | null>;
  readonly panel: RefObject<HTMLElement | null>;
  readonly intoSheet: () => void;
  /** Brings the sheet so many places further on into view, or back. */
  readonly toSheet: (further: number) => void;
  /** Goes to another cell of the sheet in view; false where a cell is being typed into. */
  readonly leap: (to: Leap) => boolean;
}

/**
 * F6 goes round through the parts of the page, header, sheet, tabs and panel, and Shift+F6 the other way; in the sheet Tab
 * goes from cell to cell. Ctrl+PageDown and Ctrl+PageUp bring the next sheet and the one before; PageDown and PageUp lead as
 * far on as there are rows in the window, Home to the first cell of the row, Ctrl+Home to that of the sheet, and Ctrl+End to
 * the last that holds something.
 */
export function useSheetKey({ header, holder, panel, intoSheet, toSheet, leap }: Parts): void {
  // biome-ignore lint/correctness/useExhaustiveDependencies: what is handed in reads what is there at the time
  useEffect(() => {
    const tabs = () => holder.current?.querySelector<HTMLElement>("[role=tablist]");
    // Whoever fills in a form goes to the sheet to select cells for it, and comes back to where they were.
    let inForm: Element | undefined;
    const remember = ({ target }: FocusEvent): void => {
      if (target instanceof HTMLElement && panel.current?.contains(target))
        inForm = target.closest("form") ? target : undefined;
    };
    const panelStop = {
      has: () => panel.current?.contains(document.activeElement) ?? false,
      enter: () => {
        const kept = inForm?.isConnected ? inForm : panel.current?.querySelector('[aria-pressed="true"]');
        (kept as HTMLElement | null)?.focus();
      },
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
      } else {
        const to = isInCells() && !isChanged(event) ? leaps[`${event.ctrlKey ? "Ctrl+" : ""}${event.key}`] : undefined;
        if (to === undefined || !leap(to)) return;
      }
      // The browser's own place for these keys is its address bar and its tabs.
      event.preventDefault();
      event.stopPropagation();
    };
    addEventListener("keydown", follow, { capture: true });
    addEventListener("focusin", remember);
    // A click on a tab is meant for its sheet; by the keys one goes on from tab to tab.
    const leave = ({ detail, target }: MouseEvent): void => {
      if (detail > 0 && target instanceof Element && tabs()?.contains(target) && target.closest("[role=tab]"))
        intoSheet();
    };
    addEventListener("click", leave);
    return () => {
      removeEventListener("click", leave);
      removeEventListener("keydown", follow, { capture: true });
      removeEventListener("focusin", remember);
    };
  }, []);
}

const leaps: Readonly<Record<string, Leap>> = {
  Home: "first of row",
  "Ctrl+Home": "first of sheet",
  "Ctrl+End": "last of sheet",
  PageDown: "window down",
  PageUp: "window up",
};

const isField = (): boolean => document.activeElement instanceof HTMLInputElement;

const isChanged = ({ altKey, metaKey, shiftKey }: KeyboardEvent): boolean => altKey || metaKey || shiftKey;

const turnOf = ({ key }: KeyboardEvent): number | undefined =>
  key === "PageDown" ? 1 : key === "PageUp" ? -1 : undefined;
