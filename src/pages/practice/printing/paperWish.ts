import { type Named, pageLines } from "./pageLines.ts";

/** What the file of a workbook says of the paper that a sheet is printed on. */
export interface PaperWish {
  readonly orientation: "portrait" | "landscape" | undefined;
  /** All of it on a single page. */
  readonly isOnePage: boolean;
  /** Rows, counted from 0, that begin a page. */
  readonly pagesBeginAt: ReadonlySet<number>;
  /** Its headers and footers, as rules for the margins of the paper. */
  readonly lines: (named: Named) => string;
}

/** Reads what the part of a sheet says of paper, before and after its cells: ECMA-376 Part 1 §18.3.1.63, .65 and .74. */
export function paperWish(sheet: string): PaperWish {
  const [begin, end] = [sheet.search(/<(?:\w+:)?sheetData\b/), sheet.lastIndexOf("sheetData")];
  const [head, tail] = [sheet.slice(0, Math.max(0, begin)), sheet.slice(Math.max(0, end))];
  const setUp = /<(?:\w+:)?pageSetup\b[^>]*>/.exec(tail)?.[0] ?? "";
  const breaks = /<(?:\w+:)?rowBreaks\b[\s\S]*?<\/(?:\w+:)?rowBreaks>/.exec(tail)?.[0] ?? "";
  const fits = /\bfitToPage="(?:1|true)"/.test(head);
  const orientation = attribute(setUp, "orientation");
  return {
    orientation: orientation === "portrait" || orientation === "landscape" ? orientation : undefined,
    isOnePage:
      fits && (attribute(setUp, "fitToHeight") ?? "1") === "1" && (attribute(setUp, "fitToWidth") ?? "1") === "1",
    // A break stands below the row whose number, counted from 1, is its id: at the row with that number counted from 0.
    pagesBeginAt: new Set([...breaks.matchAll(/<(?:\w+:)?brk\b[^>]*>/g)].map(([brk]) => Number(attribute(brk, "id")))),
    lines: (named) => pageLines(sheet, named),
  };
}

const attribute = (tag: string, name: string): string | undefined =>
  new RegExp(`\\s${name}\\s*=\\s*["']([^"']*)["']`).exec(tag)?.[1];
