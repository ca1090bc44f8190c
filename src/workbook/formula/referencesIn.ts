import { type Area, columnNumber, readPlace } from "../address.ts";
import { lastColumn, lastRow } from "../limits.ts";
import { unquoteSheet } from "./structured.ts";
import { isCall, type Token, tokenize } from "./tokenize.ts";

export interface SheetArea {
  readonly sheet: number;
  readonly area: Area;
}

/**
 * The cells that a formula in the engine's spelling names, each range as one area.
 *
 * @param sheet - the sheet it stands in
 */
export function referencesIn(
  formula: string,
  sheet: number,
  sheetByName: ReadonlyMap<string, number>,
): readonly SheetArea[] {
  const tokens = tokenize(formula.slice(1)) ?? [];
  const found: SheetArea[] = [];
  let on = sheet;
  for (let at = 0; at < tokens.length; at += 1) {
    const token = tokens[at] as Token;
    if (tokens[at + 1]?.text === "!" && (token.kind === "quoted" || token.kind === "name")) {
      on = sheetByName.get(unquoteSheet(token.text).toLowerCase()) ?? sheet;
      at += 1;
      continue;
    }
    if ((token.kind === "name" || token.kind === "number") && !isCall(tokens, at)) {
      const isRange = tokens[at + 1]?.text === ":";
      const area = areaBetween(token.text, isRange ? tokens[at + 2]?.text : undefined);
      if (area) found.push({ sheet: on, area });
      if (area && isRange) at += 2;
    }
    on = sheet;
  }
  return found;
}

export function areaBetween(from: string, to: string | undefined): Area | undefined {
  const first = readPlace(from);
  const last = to === undefined ? first : readPlace(to);
  if (first && last) return areaOf(first.row, first.column, last.row, last.column);
  if (to === undefined) return undefined;
  const [one, other] = [from.replace("$", ""), to.replace("$", "")];
  if (/^\d+$/.test(one) && /^\d+$/.test(other)) return areaOf(Number(one) - 1, 0, Number(other) - 1, lastColumn - 1);
  if (/^[A-Za-z]{1,3}$/.test(one) && /^[A-Za-z]{1,3}$/.test(other)) {
    return areaOf(0, columnNumber(one), lastRow - 1, columnNumber(other));
  }
  return undefined;
}

const areaOf = (row: number, column: number, otherRow: number, otherColumn: number): Area => ({
  top: Math.min(row, otherRow),
  left: Math.min(column, otherColumn),
  bottom: Math.max(row, otherRow),
  right: Math.max(column, otherColumn),
});
