import { strFromU8, strToU8, unzipSync, zipSync } from "fflate";
import { formulasOutside } from "./changedOutside.ts";
import { storedWorkbook } from "./storedCells.ts";

/**
 * The file with values that no spreadsheet would come to in the formulas outside the cone of FOOT: numbers have grown,
 * texts are longer, truths are turned round. Whoever works such a formula out writes another value.
 */
export function withOtherValues(bytes: Uint8Array): Uint8Array {
  const files = unzipSync(bytes);
  const book = storedWorkbook(bytes);
  const bySheet = book.sheets.map((): Map<string, string> => new Map());
  for (const [sheet, address] of formulasOutside(book)) {
    const xml = book.sheets[sheet]?.cells.get(address)?.xml ?? "";
    bySheet[sheet]?.set(xml, otherValue(xml));
  }
  book.sheets.forEach(({ part }, sheet) => {
    const others = bySheet[sheet] as Map<string, string>;
    const text = strFromU8(files[part] as Uint8Array);
    // Element by element, since one may be the beginning of another's text.
    const cells = /<(?:\w+:)?c\s[^>]*?(?:\/>|>[\s\S]*?<\/(?:\w+:)?c>)/g;
    files[part] = strToU8(text.replace(cells, (xml) => others.get(xml) ?? xml));
  });
  return zipSync(files);
}

const otherValue = (xml: string): string =>
  xml.replace(/(<(?:\w+:)?v(?:\s[^>]*)?>)([^<]*)(<)/, (whole, open: string, value: string, close: string) => {
    if (/\st="(?:e|s)"/.test(xml)) return whole;
    if (/\st="b"/.test(xml)) return `${open}${1 - Number(value)}${close}`;
    if (/\st="str"/.test(xml)) return `${open}${value}~${close}`;
    return `${open}${Number(value) + 0.125}${close}`;
  });
