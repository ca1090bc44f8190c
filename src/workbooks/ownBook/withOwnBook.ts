import { escapeXml } from "../../workbook/xml/escapeXml.ts";
import { ownBookPlace } from "./ownBookPlace.ts";

/**
 * The page that is one file, with a workbook of one's own inside, which it opens at first.
 *
 * @param page - the text of soundfold.html
 * @param name - the workbook's file name, such as hill-farm.xlsx
 * @param base64 - the workbook's bytes
 * @throws Error when the page is another one or has a workbook of one's own already
 */
export function withOwnBook(page: string, name: string, base64: string): string {
  const parts = page.split(ownBookPlace);
  if (parts.length !== 2) throw new Error("The page has no place for a workbook");
  return parts.join(`<script type="text/plain" data-book="${escapeXml(name)}" data-own>${base64}</script>`);
}
