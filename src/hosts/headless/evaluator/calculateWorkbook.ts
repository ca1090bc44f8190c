import { type Cell, isCellError } from "../../../cells/cell.ts";
import { days1904 } from "../../../cells/day.ts";
import type { AnyFunction } from "../../../definition/defineFunction.ts";
import { type Area, overlap, type Place } from "../../../workbook/address.ts";
import {
  type EngineAnswer,
  type EngineAnswers,
  type EngineCell,
  type EngineSheet,
  type EngineWorkbook,
  placeKey,
} from "../../../workbook/engine.ts";
import { FormulaTree } from "../../../workbook/formula/formulaTree.ts";
import { NotWorkedOut } from "../../../workbook/formula/notWorkedOut.ts";
import { NoFormula, parseFormula } from "../../../workbook/formula/parseFormula.ts";
import type { SheetArea } from "../../../workbook/formula/referencesIn.ts";
import { lastColumn, lastRow } from "../../../workbook/limits.ts";
import type { Registration } from "../bridge.ts";
import { isUnclearDate } from "../isUnclearDate.ts";
import type { UniverParts } from "../univerParts.ts";
import { aggregates, RunningTotals } from "./aggregates.ts";
import { CellStore, TooMuch } from "./cellStore.ts";
import { conditionals } from "./conditionals.ts";
import { dateFunctions } from "./dates.ts";
import { engineFunctions, textToNumber } from "./engineFunctions.ts";
import { evaluateFormula, type Library, type WorksheetFunction } from "./evaluateFormula.ts";
import { footFunction } from "./footFunction.ts";
import { formatted } from "./formatted.ts";
import { forms } from "./forms.ts";
import { type Task, workOutInOrder } from "./inOrder.ts";
import { KeptAnswers } from "./keptAnswers.ts";
import { lookups } from "./lookups.ts";
import { numbersAlone } from "./numbersAlone.ts";
import { placeFunctions } from "./places.ts";
import { plainFunctions } from "./plainFunctions.ts";
import { RangeIndex } from "./rangeIndex.ts";
import { ranks } from "./ranks.ts";
import { SortedNumbers } from "./sortedNumbers.ts";
import { spreads } from "./spreads.ts";
import { subtotals } from "./subtotals.ts";
import { textFunctions } from "./texts.ts";
import { type Grid, isGrid } from "./values.ts";

// Cells that may be read in all; measured, 100 million take about 15 s.
const mostWork = 250_000_000;

// Half of a column of a sheet; each cell is written into the file.
const mostFilled = lastRow / 2;

// Letters beyond what a cell usually holds, in all answers together: each is written into the text of a sheet, up to
// seven signs for one, and no text has more than 2^29.
const mostLetters = 60_000_000;
const usualLetters = 200;

/** A formula with what becomes of it. */
class Formula implements Task {
  readonly sheet: number;
  readonly row: number;
  readonly column: number;
  readonly cell: EngineCell;
  readonly tree: FormulaTree;
  fills: readonly Place[];
  answer: EngineAnswer | undefined = undefined;
  message: string | undefined = undefined;
  shown: EngineAnswer["shown"] = undefined;

  constructor(sheet: number, cell: EngineCell, tree: FormulaTree, fills: readonly Place[]) {
    this.sheet = sheet;
    this.row = cell.row;
    this.column = cell.column;
    this.cell = cell;
    this.tree = tree;
    this.fills = fills;
  }

  get reads(): readonly SheetArea[] {
    return this.tree.readsIn(this.row);
  }

  get dynamic(): boolean {
    return this.tree.dynamic;
  }
}

type OnChange = ((row: number, column: number) => void) | undefined;

const noFilter: ReadonlySet<number> = new Set();
const none: readonly EngineCell[] = [];

/** Works out the formulas of a workbook, each once, after those it rests on. */
export function calculateWorkbook(
  workbook: EngineWorkbook,
  catalogue: readonly AnyFunction[],
  parts: UniverParts,
  replaced: readonly Registration[],
): EngineAnswers {
  const { sheets, dateSystem } = workbook;
  const store = new CellStore(
    sheets.map(({ hidden = noFilter, filtered = noFilter }) => ({ hidden, filtered })),
    mostWork,
  );
  const sheetByName = new Map(sheets.map(({ name }, index) => [name.toLowerCase(), index]));
  const answers = sheets.map(() => new Map<number, EngineAnswer>());
  const formulas: Formula[] = [];
  const spills = sheets.map(() => new Map<number, Area>());
  const formulaAt = sheets.map(placesOfFormulas);
  const fillsOf = filledCells(sheets);

  sheets.forEach((sheet, index) => {
    for (const cell of sheet.cells) {
      const { row, column, formula, value } = cell;
      if (formula === undefined) {
        if (value !== null) store.put(index, row, column, value);
        continue;
      }
      try {
        const tree =
          typeof formula === "string" ? new FormulaTree(parseFormula(formula, index, sheetByName), row) : formula;
        formulas.push(new Formula(index, cell, tree, fillsOf[index]?.get(placeKey(row, column)) ?? none));
      } catch (error) {
        if (!(error instanceof NoFormula)) throw error;
        answers[index]?.set(placeKey(row, column), { value, left: error.message });
        if (value !== null) store.put(index, row, column, value);
      }
    }
  });

  const index = new RangeIndex(store);
  const running = new RunningTotals(store);
  const sorted = new SortedNumbers(store);
  const kept = new KeptAnswers();
  const toNumber = textToNumber(parts, dateSystem === 1904 ? days1904 : 0);
  const isUnclear = (text: string): boolean => isUnclearDate(text, parts.core.numfmt);
  const engine = engineFunctions(parts, replaced);
  /** The formula that is being worked out. */
  let current: Formula | undefined;
  const heard = {
    refused: (message: string) => {
      if (current) [current.message, current.shown] = [message, undefined];
    },
    answered: (shown: NonNullable<EngineAnswer["shown"]>) => {
      if (current) [current.message, current.shown] = [undefined, shown];
    },
  };
  const functions = new Map<string, WorksheetFunction>([
    ...plainFunctions,
    ...textFunctions,
    ...dateFunctions,
    ...numbersAlone(engine),
    ...spreads,
    ...formatted(engine),
    ...aggregates(running),
    ...ranks(sorted, engine),
    ...conditionals({ index, sorted, answers: kept }, isUnclear),
    ...lookups(index),
    ...subtotals((sheet, row, column) => sheets[sheet]?.subtotals?.has(placeKey(row, column)) ?? false),
    ...placeFunctions({
      sheetByName,
      names: new Map(workbook.names.map(({ name, formula }) => [name.toUpperCase(), formula])),
      spillAt: (sheet, row, column) => spills[sheet]?.get(placeKey(row, column)),
      isFormula: (sheet, row, column) => formulaAt[sheet]?.().has(placeKey(row, column)) ?? false,
    }),
    ...catalogue.map((definition) => [`FOOT.${definition.name}`, footFunction(definition, dateSystem, heard)] as const),
  ]);
  const library: Library = {
    form: (name) => forms.get(name),
    find: (name) => functions.get(name) ?? engine.find(name),
  };

  const evaluateOnce = (task: number): Cell | Grid => {
    const { tree, cell, sheet, row, column } = formulas[task] as Formula;
    const node = tree.nodeIn(row);
    const run = (): Cell | Grid =>
      evaluateFormula(node, { store, at: { sheet, row, column }, arrays: cell.single !== true, toNumber, library });
    store.cut = false;
    store.roomBelow = 1;
    const first = run();
    if (!store.cut) return first;
    // Whole columns were cut after one blank row: where more blank rows make a difference, they count.
    store.roomBelow = store.lastRow() + 64;
    const second = run();
    store.roomBelow = 1;
    if (!isGrid(first) && !isGrid(second) && same(first, second)) return first;
    store.roomBelow = lastRow;
    try {
      return run();
    } finally {
      store.roomBelow = 1;
    }
  };

  let letters = 0;
  /** Counts what a text takes beyond the usual. */
  const hold = (value: Cell): void => {
    if (typeof value !== "string" || value.length <= usualLetters) return;
    letters += value.length - usualLetters;
    if (letters > mostLetters) throw new TooMuch("the texts of the answers are longer than a file can hold");
  };

  const forget = (): void => {
    store.forget();
    index.forget();
    running.forget();
    sorted.forget();
    kept.forget();
  };

  /** Puts an answer into the cells. @returns those it fills that were not known to be its own */
  const place = (task: number, content: Cell | Grid, onChange: OnChange): readonly Place[] => {
    const formula = formulas[task] as Formula;
    const { cell, sheet, row, column, fills } = formula;
    const key = placeKey(row, column);
    const before = spills[sheet]?.get(key);
    const put = (toRow: number, toColumn: number, value: Cell): void => {
      if (same(store.column(sheet, toColumn)[toRow] ?? null, value)) return;
      store.put(sheet, toRow, toColumn, value);
      onChange?.(toRow, toColumn);
    };
    if (isGrid(content) && content.grid.length * (content.grid[0]?.length ?? 0) > mostFilled)
      throw new TooMuch("its answer covers more cells than can be worked out");
    const shaped = cell.fixed ? laidOut(content, cell.fixed) : content;
    if (isGrid(shaped)) for (const line of shaped.grid) for (const value of line) hold(value);
    else hold(shaped);
    if (!isGrid(shaped) && !before) {
      formula.answer = inOneCell(shownOf(shaped), formula);
      put(row, column, formula.answer.value);
      return none;
    }
    const area = isGrid(shaped) ? areaFor(shaped, { row, column }) : undefined;
    if (before) {
      spills[sheet]?.delete(key);
      for (const at of placesIn(before)) {
        if (at.row === row && at.column === column) continue;
        if (!area || at.row > area.bottom || at.column > area.right) put(at.row, at.column, null);
      }
    }
    let answer: EngineAnswer;
    if (area) store.spend(10 * (area.bottom - area.top + 1) * (area.right - area.left + 1));
    if (!isGrid(shaped) || !area) answer = { value: shownOf(isGrid(shaped) ? null : shaped) };
    else {
      const blocked = cell.fixed ? undefined : blockedBy(area, sheet, { row, column }, before);
      if (blocked !== undefined)
        answer = { value: { error: "#SPILL!" }, ...(blocked === "" ? {} : { message: blocked }) };
      else {
        const cells = shaped.grid.map((line) => (line.includes(null) ? line.map(shownOf) : line));
        answer = { value: cells[0]?.[0] ?? 0, spill: { area, cells } };
      }
    }
    put(row, column, answer.value);
    const surprises: Place[] = [];
    if (answer.spill) {
      spills[sheet]?.set(key, answer.spill.area);
      const known = new Set(fills.map((at) => placeKey(at.row, at.column)));
      answer.spill.cells.forEach((line, down) => {
        line.forEach((value, across) => {
          if (down === 0 && across === 0) return;
          put(row + down, column + across, value);
          if (!known.has(placeKey(row + down, column + across)))
            surprises.push({ row: row + down, column: column + across });
        });
      });
    }
    if (surprises.length > 0 || before) forget();
    const { message, shown } = formula;
    formula.answer = {
      ...answer,
      ...(message === undefined || answer.message !== undefined ? {} : { message }),
      ...(shown === undefined ? {} : { shown }),
    };
    return surprises;
  };

  const blockedBy = (
    { top, left, bottom, right }: Area,
    sheet: number,
    anchor: Place,
    own: Area | undefined,
  ): string | undefined => {
    if (bottom >= lastRow || right >= lastColumn) return "";
    if (sheets[sheet]?.reserved?.some((other) => overlap({ top, left, bottom, right }, other)))
      return "the answer needs cells that belong to a table or to merged cells";
    const formulasHere = (formulaAt[sheet] as ReturnType<typeof placesOfFormulas>)();
    for (let column = left; column <= right; column += 1) {
      const cells = store.column(sheet, column);
      for (let row = top; row <= bottom; row += 1) {
        if (row === anchor.row && column === anchor.column) continue;
        if (formulasHere.has(placeKey(row, column))) return "";
        const isOwn = own && row <= own.bottom && column <= own.right;
        if ((cells[row] ?? null) !== null && !isOwn) return "";
      }
    }
    return undefined;
  };

  const keep = (task: number, left: string, onChange: OnChange): readonly Place[] => {
    const formula = formulas[task] as Formula;
    const { sheet, row, column, cell } = formula;
    const { value } = cell;
    formula.answer = { value, left };
    for (const at of [{ row, column, value }, ...(fillsOf[sheet]?.get(placeKey(row, column)) ?? [])]) {
      if (same(store.column(sheet, at.column)[at.row] ?? null, at.value)) continue;
      store.put(sheet, at.row, at.column, at.value);
      onChange?.(at.row, at.column);
    }
    return [];
  };

  let circular = false;
  workOutInOrder(formulas, startOrder(formulas), {
    readTooEarly: forget,
    keepCircular(task) {
      circular = true;
      keep(task, "it depends on its own answer", undefined);
    },
    evaluate(task, watch, onChange) {
      let open = false;
      store.watch = watch;
      const formula = formulas[task] as Formula;
      formula.message = undefined;
      formula.shown = undefined;
      current = formula;
      try {
        const content = evaluateOnce(task);
        store.watch = undefined;
        open = true;
        return place(task, content, onChange);
      } catch (error) {
        if (error instanceof NotWorkedOut || error instanceof TooMuch) return keep(task, error.message, onChange);
        if (!open && error instanceof RangeError && /call stack/.test(error.message))
          return keep(task, "it is nested too deep to be followed", onChange);
        throw error;
      } finally {
        store.watch = undefined;
      }
    },
  });

  for (const { sheet, row, column, answer } of formulas) if (answer) answers[sheet]?.set(placeKey(row, column), answer);
  return { sheets: answers, circular };
}

/** Formulas that may fill more than one cell go first, so that fewer are read before they are known. */
function startOrder(formulas: readonly Formula[]): readonly number[] {
  const all = formulas.map((_, task) => task);
  return [
    ...all.filter((task) => formulas[task]?.cell.single !== true),
    ...all.filter((task) => formulas[task]?.cell.single === true),
  ];
}

/** Asked for only by a formula that fills several cells, or looks whether a cell holds one. */
function placesOfFormulas({ cells }: EngineSheet): () => ReadonlySet<number> {
  let places: Set<number> | undefined;
  return () => {
    if (places) return places;
    places = new Set();
    for (const { row, column, formula } of cells) if (formula !== undefined) places.add(placeKey(row, column));
    return places;
  };
}

/** Cells that an array formula filled when the file was saved, by the formula's key. */
function filledCells(sheets: readonly EngineSheet[]): readonly ReadonlyMap<number, readonly EngineCell[]>[] {
  return sheets.map(({ filled = [] }) => {
    const byAnchor = new Map<number, EngineCell[]>();
    for (const cell of filled) {
      const list = byAnchor.get(cell.by);
      if (list) list.push(cell);
      else byAnchor.set(cell.by, [cell]);
    }
    return byAnchor;
  });
}

/** The answer of nearly every formula, so that nothing more is made than it holds. */
function inOneCell(value: Cell, { message, shown }: Formula): EngineAnswer {
  if (message === undefined) return shown === undefined ? { value } : { value, shown };
  return shown === undefined ? { value, message } : { value, message, shown };
}

/** A formula that gives a blank cell shows 0. */
const shownOf = (cell: Cell): Cell => cell ?? 0;

const same = (one: Cell, other: Cell): boolean =>
  Object.is(one, other) || (isCellError(one) && isCellError(other) && one.error === other.error);

const areaFor = ({ grid }: Grid, { row, column }: Place): Area => ({
  top: row,
  left: column,
  bottom: row + grid.length - 1,
  right: column + (grid[0]?.length ?? 1) - 1,
});

function* placesIn({ top, left, bottom, right }: Area): Iterable<Place> {
  for (let row = top; row <= bottom; row += 1)
    for (let column = left; column <= right; column += 1) yield { row, column };
}

/**
 * An array formula of the old kind: its answer laid out over the cells it was entered in. A single value, row or column
 * repeats; what is too long is cut; what is too short ends in #N/A.
 */
function laidOut(content: Cell | Grid, { top, left, bottom, right }: Area): Cell | Grid {
  const given = isGrid(content) ? content.grid : [[content]];
  const at = (row: number, column: number): Cell => {
    const line = given[given.length === 1 ? 0 : row];
    const index = line?.length === 1 ? 0 : column;
    return line && index < line.length ? (line[index] ?? null) : { error: "#N/A" };
  };
  if (top === bottom && left === right) return at(0, 0);
  return {
    grid: Array.from({ length: bottom - top + 1 }, (_, row) =>
      Array.from({ length: right - left + 1 }, (__, column) => at(row, column)),
    ),
  };
}
