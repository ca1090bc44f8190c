import { CellValueType, numfmt } from "@univerjs/core";
import { AFTER_CELL_EDIT, type SheetInterceptorService } from "@univerjs/preset-sheets-core";
import { isUnclearDate } from "../../../hosts/headless/isUnclearDate.ts";
import { datedWithCommas } from "./datedWithCommas.ts";
import { remembered } from "./remembered.ts";

// Not to be seen, and in no date: a text that begins with it is no date for the embedded spreadsheet.
const mark = "\u2060";

// Asked of each text that is drawn.
export const isUnclear = remembered((text) => isUnclearDate(text, numfmt) || datedWithCommas(text));

/** Lets an unclear date that is typed stay the text that it is. */
export function keepUnclearDates({ writeCellInterceptor }: SheetInterceptorService): void {
  writeCellInterceptor.intercept(AFTER_CELL_EDIT, {
    priority: 1,
    handler(cell, _, next) {
      const text = cell?.p?.body?.dataStream.replace(/\r\n$/, "") ?? cell?.v;
      if (typeof text !== "string" || !isUnclear(text)) return next(cell);
      // Without `next` nobody else is asked, such as who makes dates of texts.
      return { ...cell, p: null, v: text, t: CellValueType.STRING };
    },
  });
}

/** What is pasted, in which the embedded spreadsheet finds the clear dates only. */
export interface Pasted {
  htmlContent?: string;
  textContent?: string;
}

/**
 * Marks the unclear dates in what is pasted, whose lines end as they do on Windows or not: of both letters of such an end
 * the embedded spreadsheet leaves a blank behind each text. The mark is taken off again by `withoutMark`.
 */
export function markUnclearDates(pasted: Pasted): void {
  const { htmlContent, textContent } = pasted;
  if (textContent) pasted.textContent = textContent.replace(/\r\n?/g, "\n").replace(/[^\t\r\n]+/g, marked);
  if (htmlContent) pasted.htmlContent = markedHtml(htmlContent);
}

export const withoutMark = (text: string): string => text.replace(mark, "");

const marked = (text: string): string => (isUnclear(text) ? mark + text : text);

function markedHtml(html: string): string {
  const page = new DOMParser().parseFromString(html, "text/html");
  const texts = page.createTreeWalker(page.body, NodeFilter.SHOW_TEXT);
  while (texts.nextNode()) texts.currentNode.nodeValue = marked(texts.currentNode.nodeValue ?? "");
  return page.documentElement.outerHTML;
}
