import { readPlace } from "../address.ts";
import { lastRow } from "../limits.ts";
import { storedSpelling } from "./storedSpelling.ts";
import { isCall, type Token, tokenize } from "./tokenize.ts";

/**
 * A formula apart from the row it stands in. Down a column of records nearly every formula is the one above with other
 * rows in its relative references, and what is known of the one holds for all of them.
 */
export class RowPattern {
  /** What stands between the rows of its relative references. */
  readonly #pieces: readonly string[];
  /** Of each relative reference, how far down from the formula it is. */
  readonly #down: readonly number[];
  /** The same in the spelling of files. */
  #stored: RowPattern | undefined;

  private constructor(pieces: readonly string[], down: readonly number[]) {
    this.#pieces = pieces;
    this.#down = down;
  }

  /**
   * @param formula - without `=`
   * @param row - where it stands, from 0
   * @param isDefined - whether a word, in small letters, is a name or a table of the workbook
   * @returns undefined where it may mean something else in another row though its words are the same
   */
  static of(formula: string, row: number, isDefined: (word: string) => boolean): RowPattern | undefined {
    const tokens = tokenize(formula);
    if (!tokens) return undefined;
    const pieces: string[] = [];
    const down: number[] = [];
    let piece = "";
    for (let at = 0; at < tokens.length; at += 1) {
      const token = tokens[at] as Token;
      if (isAskew(tokens, at) || (isWord(tokens, at) && isDefined(token.text.toLowerCase()))) return undefined;
      const digits = isWord(tokens, at) && readPlace(token.text) ? (relativeRow.exec(token.text)?.[1] ?? "") : "";
      piece += token.text.slice(0, token.text.length - digits.length);
      if (digits === "") continue;
      pieces.push(piece);
      down.push(Number(digits) - 1 - row);
      piece = "";
    }
    pieces.push(piece);
    return new RowPattern(pieces, down);
  }

  /** Whether a formula is this one in another row. */
  fits(formula: string, row: number): boolean {
    return formula !== "" && this.#inRow(row) === formula;
  }

  /**
   * The spelling of files for a formula that fits, worked out for the first of them.
   *
   * @param row - where the formula stands
   */
  stored(formula: string, row: number): string {
    if (this.#stored === undefined) {
      const stored = storedSpelling(formula);
      // Only names of functions are spelled another way, so that it is a pattern too.
      this.#stored = stored === formula ? this : RowPattern.of(stored, row, () => false);
      if (this.#stored === undefined) return stored;
    }
    return this.#stored === this ? formula : this.#stored.#inRow(row);
  }

  /** As it reads in a row; no formula at all where a reference would leave the sheet. */
  #inRow(row: number): string {
    let formula = this.#pieces[0] as string;
    for (let index = 0; index < this.#down.length; index += 1) {
      const number = row + (this.#down[index] as number) + 1;
      if (number < 1 || number > lastRow) return "";
      formula += number + (this.#pieces[index + 1] as string);
    }
    return formula;
  }
}

/** The row of a reference without `$` before it. A row with zeros in front is left as it is written. */
const relativeRow = /[A-Za-z]([1-9]\d*)$/;

/** A name that is neither that of a function nor that of a sheet. */
const isWord = (tokens: readonly Token[], at: number): boolean =>
  tokens[at]?.kind === "name" && !isCall(tokens, at) && tokens[at + 1]?.text !== "!";

/** What hangs on more than its row: parts of tables, names of LET as files spell them, a sheet apart from its `!`. */
function isAskew(tokens: readonly Token[], at: number): boolean {
  const { kind, text } = tokens[at] as Token;
  const before = tokens[at - 1]?.kind;
  return (
    kind === "bracket" ||
    (kind === "name" && /^_xl/i.test(text) && !isCall(tokens, at)) ||
    (text === "!" && before !== "name" && before !== "quoted")
  );
}
