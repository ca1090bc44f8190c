import { h, render } from "preact";
import { useEffect } from "preact/hooks";
import type { Clock } from "../../../hosts/localClock.ts";
import type { PrintedSheet } from "../grid/sheetToPrint.ts";
import { sheetWords } from "../sheetWords.ts";
import { hasOwnPages } from "./layPages.ts";
import { SheetOnPaper } from "./SheetOnPaper.tsx";

/** Has the sheet in view printed instead of the page. What is printed is made from the cells each time, and is gone afterwards. */
export function usePrinting(sheet: () => PrintedSheet | undefined, file: () => string, clock: Clock): void {
  // biome-ignore lint/correctness/useExhaustiveDependencies: what is handed in reads what is there at the time
  useEffect(() => {
    const paper = document.createElement("div");
    paper.className = "paper";
    const lay = (): void => {
      const printed = sheet();
      if (!printed) return;
      // Charts read their colours off the page.
      document.body.append(paper);
      const given = { sheet: printed, file: file(), now: clock(), partOf: sheetWords.partOf };
      render(h(SheetOnPaper, given), paper);
      // Texts run over more lines on paper than on the screen.
      if (hasOwnPages(printed.wish)) render(h(SheetOnPaper, { ...given, heights: measured(paper) }), paper);
    };
    const clear = (): void => {
      render(null, paper);
      paper.remove();
    };
    addEventListener("beforeprint", lay);
    addEventListener("afterprint", clear);
    return () => {
      clear();
      removeEventListener("beforeprint", lay);
      removeEventListener("afterprint", clear);
    };
  }, []);
}

/** How high the rows of the first part are, from one that begins a page to the next, in its own pixels. */
function measured(paper: HTMLElement): readonly number[] {
  paper.classList.add("measured");
  const part = paper.querySelector("section");
  const zoom = Number(part?.querySelector("table")?.style.zoom) || 1;
  const high = (element: Element): number => element.getBoundingClientRect().height / zoom;
  const heading = [...(part?.querySelectorAll("thead tr") ?? [])].reduce((sum, row) => sum + high(row), 0);
  const heights = [heading];
  for (const row of part?.querySelectorAll("tbody tr") ?? []) {
    if (row.classList.contains("begins")) heights.push(heading);
    heights[heights.length - 1] = (heights.at(-1) ?? 0) + high(row);
  }
  paper.classList.remove("measured");
  return heights;
}
