import type { Cell, Cells } from "../../cells/cell.ts";
import type { AnyFunction } from "../../definition/defineFunction.ts";
import { evaluate } from "../../definition/evaluate.ts";
import type { Argument } from "../../reading/readArguments.ts";
import type { Area } from "../../workbook/address.ts";
import { type EngineAnswer, type EngineCell, type EngineWorkbook, placeKey } from "../../workbook/engine.ts";
import { referencesIn, type SheetArea } from "../../workbook/formula/referencesIn.ts";
import { joinTokens, type Token, tokenize } from "../../workbook/formula/tokenize.ts";
import { keptRanges } from "./keptRanges.ts";

/** A formula that was worked out without the engine, with the cells it read. */
interface Direct {
  readonly answer: EngineAnswer;
  readonly reads: readonly SheetArea[];
}

/** By sheet, by key of the cell. */
export type Directs = readonly Map<number, Direct>[];

// A formula may rest on others that were worked out here; longer chains than this go to the engine.
const longestChain = 3;

// Ten columns of 100,000 records; measured, they take 65 MB.
const mostKeptCells = 1_000_000;

/**
 * Formulas that are one FOOT call over typed records, the bulk of a record sheet, worked out straight from the
 * cells: the engine takes a hundred times as long to read such a formula as the function takes to answer it.
 *
 * @param leave - whether a formula must be left to the engine
 */
export function workOutDirectly(
  workbook: EngineWorkbook,
  catalogue: readonly AnyFunction[],
  leave: (sheet: number, key: number) => boolean,
): Directs {
  const { dateSystem, sheets } = workbook;
  const definitions = new Map(catalogue.map((definition) => [`FOOT.${definition.name}`, definition]));
  const sheetByName = new Map(sheets.map(({ name }, place) => [name.toLowerCase(), place]));
  const done: Map<number, Direct>[] = sheets.map(() => new Map());
  const grid = gridOf(workbook, done);
  let waiting = sheets.flatMap(({ cells }, sheet) =>
    cells.flatMap((cell) => {
      const call = cell.formula === undefined ? undefined : readCall(cell.formula, sheet, definitions, sheetByName);
      return call && !leave(sheet, placeKey(cell.row, cell.column)) ? [{ sheet, cell, ...call }] : [];
    }),
  );
  for (let round = 0; round < longestChain && waiting.length > 0; round += 1) {
    const next = waiting.filter(({ sheet, cell, definition, given, reads }) => {
      if (!reads.every(grid.isSettled)) return true;
      const outcome = evaluate(
        definition,
        given.map((argument) => argumentOf(argument, grid.read)),
        { dateSystem },
      );
      const answer = answerOf(outcome);
      if (answer) done[sheet]?.set(placeKey(cell.row, cell.column), { answer, reads });
      return false;
    });
    if (next.length === waiting.length) break;
    waiting = next;
  }
  return done;
}

/** An answer of one cell; larger ones are for the engine to lay out. */
function answerOf(outcome: ReturnType<typeof evaluate>): EngineAnswer | undefined {
  if (!outcome.ok) return { value: { error: outcome.code }, message: outcome.message };
  const { cells, formats, headings } = outcome;
  if (cells.length !== 1 || cells[0]?.length !== 1) return undefined;
  return { value: cells[0][0] ?? "", shown: { formats, headings } };
}

type Given = { readonly constant: Cell } | { readonly area: SheetArea };

interface Call {
  readonly definition: AnyFunction;
  readonly given: readonly Given[];
  readonly reads: readonly SheetArea[];
}

/** `=FOOT.X(…)` whose arguments are cells, ranges, numbers, texts or nothing; anything else is for the engine. */
function readCall(
  formula: string,
  sheet: number,
  definitions: ReadonlyMap<string, AnyFunction>,
  sheetByName: ReadonlyMap<string, number>,
): Call | undefined {
  const definition = formula.startsWith("=FOOT.") ? definitions.get(formula.slice(1, formula.indexOf("("))) : undefined;
  const tokens = definition && tokenize(formula.slice(1));
  if (!definition || !tokens || tokens.at(-1)?.text !== ")") return undefined;
  const given: Given[] = [];
  for (const argument of argumentsOf(tokens.slice(2, -1))) {
    const read = readArgument(argument, sheet, sheetByName);
    if (!read) return undefined;
    given.push(read);
  }
  return { definition, given, reads: given.flatMap((argument) => ("area" in argument ? [argument.area] : [])) };
}

function argumentsOf(tokens: readonly Token[]): readonly (readonly Token[])[] {
  const solid = tokens.filter(({ kind }) => kind !== "space");
  if (solid.length === 0) return [];
  const list: Token[][] = [[]];
  for (const token of solid) {
    if (token.kind === "separator") list.push([]);
    else list.at(-1)?.push(token);
  }
  return list;
}

function readArgument(
  tokens: readonly Token[],
  sheet: number,
  sheetByName: ReadonlyMap<string, number>,
): Given | undefined {
  const [first, second] = tokens;
  if (first === undefined) return { constant: null };
  if (tokens.length === 1 && first.kind === "number") return { constant: Number(first.text) };
  if (tokens.length === 2 && first.text === "-" && second?.kind === "number") return { constant: -Number(second.text) };
  if (tokens.length === 1 && first.kind === "text") return { constant: first.text.slice(1, -1).replaceAll('""', '"') };
  if (tokens.length === 1 && /^(?:true|false)$/i.test(first.text)) return { constant: /^true$/i.test(first.text) };
  const isReference = tokens.every(({ kind, text }) => isPieceOfReference(kind, text));
  if (!isReference) return undefined;
  const [area, ...others] = referencesIn(`=${joinTokens(tokens)}`, sheet, sheetByName);
  return area && others.length === 0 ? { area } : undefined;
}

const isPieceOfReference = (kind: Token["kind"], text: string): boolean =>
  kind === "name" || kind === "quoted" || kind === "number" || text === ":" || text === "!";

const argumentOf = (given: Given, read: (area: SheetArea) => Cells): Argument =>
  "constant" in given ? given.constant : read(given.area);

/** The cells of the workbook, to be read by area. */
function gridOf({ sheets }: EngineWorkbook, done: Directs) {
  const stores = sheets.map(({ cells }) => {
    const byKey = new Map<number, EngineCell>();
    const formulas = new Map<number, number[]>();
    let last = 0;
    for (const cell of cells) {
      byKey.set(placeKey(cell.row, cell.column), cell);
      last = Math.max(last, cell.row);
      if (cell.formula === undefined) continue;
      const rows = formulas.get(cell.column);
      if (rows) rows.push(cell.row);
      else formulas.set(cell.column, [cell.row]);
    }
    // Cells may stand in any order in a file; looking up by halving needs them sorted.
    for (const rows of formulas.values()) rows.sort((one, other) => one - other);
    return { byKey, formulas, last };
  });
  const valueAt = (sheet: number, row: number, column: number): Cell => {
    const key = placeKey(row, column);
    const cell = stores[sheet]?.byKey.get(key);
    return cell?.formula === undefined ? (cell?.value ?? null) : (done[sheet]?.get(key)?.answer.value ?? null);
  };
  const known = keptRanges(mostKeptCells);
  return {
    /** Whether every formula in the area has its answer. */
    isSettled({ sheet, area }: SheetArea): boolean {
      for (const [column, rows] of stores[sheet]?.formulas ?? []) {
        if (column < area.left || column > area.right) continue;
        for (const row of rowsWithin(rows, area)) if (!done[sheet]?.has(placeKey(row, column))) return false;
      }
      return true;
    },
    /** Down to the sheet's last row; ranges of many rows are kept, since many formulas read the same ones. */
    read({ sheet, area }: SheetArea): Cells {
      const bottom = Math.max(area.top, Math.min(area.bottom, stores[sheet]?.last ?? 0));
      const name = bottom > area.top ? `${sheet} ${area.top} ${area.left} ${bottom} ${area.right}` : "";
      const kept = known.get(name);
      if (kept) return kept;
      const cells: Cell[][] = [];
      for (let row = area.top; row <= bottom; row += 1) {
        // Of its final length from the start: an array that grows reserves room for 17 cells.
        const line = new Array<Cell>(area.right - area.left + 1);
        for (let column = area.left; column <= area.right; column += 1)
          line[column - area.left] = valueAt(sheet, row, column);
        cells.push(line);
      }
      if (name !== "") known.keep(name, cells);
      return cells;
    },
  };
}

/** The rows of a column's formulas that lie in the area; a single row is looked up by halving. */
function rowsWithin(rows: readonly number[], { top, bottom }: Area): readonly number[] {
  let [low, high] = [0, rows.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((rows[middle] as number) < top) low = middle + 1;
    else high = middle;
  }
  const found: number[] = [];
  for (let at = low; at < rows.length && (rows[at] as number) <= bottom; at += 1) found.push(rows[at] as number);
  return found;
}
