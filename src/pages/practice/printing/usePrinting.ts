import { h, render } from "preact";
import { useEffect } from "preact/hooks";
import type { PrintedSheet } from "../grid/sheetToPrint.ts";
import { SheetOnPaper } from "./SheetOnPaper.tsx";

/** Has the sheet in view printed instead of the page. What is printed is made from the cells each time, and is gone afterwards. */
export function usePrinting(sheet: () => PrintedSheet | undefined, file: () => string): void {
  // biome-ignore lint/correctness/useExhaustiveDependencies: what is handed in reads what is there at the time
  useEffect(() => {
    const paper = document.createElement("div");
    paper.className = "paper";
    const lay = (): void => {
      const printed = sheet();
      if (!printed) return;
      render(h(SheetOnPaper, { sheet: printed, file: file() }), paper);
      document.body.append(paper);
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
