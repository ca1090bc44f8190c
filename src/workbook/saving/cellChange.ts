import type { Cell } from "../../cells/cell.ts";
import { isCellError } from "../../cells/cell.ts";
import { type Area, areaText, type Place, placeText } from "../address.ts";
import type { SheetCell } from "../model.ts";
import { encodeText, escapeXml } from "../xml/escapeXml.ts";

/** A formula as it goes into the file: kept as it is, or written anew. */
export type FormulaChange =
  | "keep"
  | { readonly text: string; readonly array?: { readonly area: Area; readonly mark: number } };

/** What a cell becomes. */
export interface CellChange extends Place {
  readonly old: SheetCell | undefined;
  readonly value: Cell;
  readonly style: number;
  readonly formula: FormulaChange | undefined;
}

/** The `<c>` element of a changed cell; empty text when nothing is left of it. */
export function cellElement(change: CellChange, sheetText: string, prefix: string): string {
  const { old, value, style, formula } = change;
  const extra = old?.extra ?? "";
  if (value === null && formula === undefined && style === 0 && extra === "") return "";
  const mark = typeof formula === "object" && formula.array ? ` cm="${formula.array.mark}"` : "";
  const kept = formula === "keep" && old?.formula ? sheetText.slice(old.formula.start, old.formula.end) : "";
  const written = typeof formula === "object" ? formulaElement(formula, prefix) : kept;
  const { type, content } = valueElement(value, prefix);
  const styled = style === 0 ? "" : ` s="${style}"`;
  const inside = written + content + extra;
  const opening = `<${prefix}c r="${placeText(change)}"${styled}${type}${mark}`;
  return inside === "" ? `${opening}/>` : `${opening}>${inside}</${prefix}c>`;
}

const formulaElement = ({ text, array }: Exclude<FormulaChange, "keep">, prefix: string): string =>
  `<${prefix}f${array ? ` t="array" ref="${areaText(array.area)}"` : ""}>${escapeXml(text)}</${prefix}f>`;

function valueElement(value: Cell, prefix: string): { type: string; content: string } {
  const holding = (text: string): string => `<${prefix}v>${text}</${prefix}v>`;
  if (value === null) return { type: "", content: "" };
  if (typeof value === "number") return { type: "", content: holding(String(value)) };
  if (typeof value === "boolean") return { type: ' t="b"', content: holding(value ? "1" : "0") };
  if (isCellError(value)) return { type: ' t="e"', content: holding(escapeXml(value.error)) };
  return { type: ' t="str"', content: holding(escapeXml(encodeText(value))) };
}

export function sameValue(one: Cell, other: Cell): boolean {
  if (isCellError(one) && isCellError(other)) return one.error === other.error;
  return one === other;
}
