import { columnLetters, columnNumber, readPlace } from "../address.ts";
import { lastColumn, lastRow } from "../limits.ts";
import { isCall, joinTokens, type Token, tokenize } from "./tokenize.ts";

const cellPattern = /^(\$?)([A-Za-z]{1,3})(\$?)([0-9]{1,7})$/;
const columnPattern = /^(\$?)([A-Za-z]{1,3})$/;
const rowPattern = /^(\$?)([0-9]{1,7})$/;

/**
 * A formula as it reads when it is copied so many rows and columns away: relative references move, and wrap
 * around the sheet's edge as spreadsheets do in shared formulas and names.
 *
 * @example
 * shiftFormula("A1+$A1+A$1+SUM(B:B)", 2, 1) // → "B3+$A3+B$1+SUM(C:C)"
 */
export function shiftFormula(formula: string, rows: number, columns: number): string {
  const tokens = tokenize(formula);
  return tokens ? joinTokens(shiftTokens(tokens, rows, columns)) : formula;
}

export function shiftTokens(tokens: readonly Token[], rows: number, columns: number): readonly Token[] {
  if (rows === 0 && columns === 0) return tokens;
  return tokens.map((token, at) => {
    if (token.kind !== "name" && token.kind !== "number") return token;
    if (isCall(tokens, at) || tokens[at + 1]?.text === "!" || tokens[at + 1]?.kind === "bracket") return token;
    const text = shiftOne(token.text, isBesideColon(tokens, at), rows, columns);
    return text === token.text ? token : { kind: token.kind, text };
  });
}

const isBesideColon = (tokens: readonly Token[], at: number): boolean =>
  tokens[at + 1]?.text === ":" || tokens[at - 1]?.text === ":";

function shiftOne(text: string, besideColon: boolean, rows: number, columns: number): string {
  const cell = cellPattern.exec(text);
  if (cell) {
    const [, fixedColumn = "", letters = "", fixedRow = "", number = ""] = cell;
    // Beyond a sheet's last cell it is a name, such as XYZ2026.
    if (!readPlace(text)) return text;
    return fixedColumn + movedColumn(letters, fixedColumn, columns) + fixedRow + movedRow(number, fixedRow, rows);
  }
  if (!besideColon) return text;
  const column = columnPattern.exec(text);
  if (column) return `${column[1]}${movedColumn(column[2] as string, column[1] as string, columns)}`;
  const row = rowPattern.exec(text);
  if (row) return `${row[1]}${movedRow(row[2] as string, row[1] as string, rows)}`;
  return text;
}

const movedColumn = (letters: string, fixed: string, by: number): string =>
  fixed || by === 0 ? letters : columnLetters(wrap(columnNumber(letters) + by, lastColumn));

const movedRow = (number: string, fixed: string, by: number): string =>
  fixed || by === 0 ? number : String(wrap(Number(number) - 1 + by, lastRow) + 1);

const wrap = (value: number, size: number): number => ((value % size) + size) % size;
