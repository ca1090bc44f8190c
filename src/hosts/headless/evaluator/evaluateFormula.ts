import { type Cell, isCellError } from "../../../cells/cell.ts";
import type { Area, Place } from "../../../workbook/address.ts";
import { NotWorkedOut } from "../../../workbook/formula/notWorkedOut.ts";
import type { FormulaNode } from "../../../workbook/formula/parseFormula.ts";
import type { SheetArea } from "../../../workbook/formula/referencesIn.ts";
import { argumentClass } from "./argumentClasses.ts";
import type { CellStore } from "./cellStore.ts";
import { operate, type ToNumber } from "./operators.ts";
import {
  errorOf,
  firstOf,
  type Grid,
  gridOr,
  isGrid,
  isLambda,
  isReference,
  type Lambda,
  lift,
  type Reference,
  type Scope,
  type Value,
} from "./values.ts";

/** What a function is given beyond its arguments. */
export interface Calling {
  readonly store: CellStore;
  readonly at: Place & { readonly sheet: number };
  readonly toNumber: ToNumber;
  /** Works with whole arrays, as formulas with the dynamic mark and array formulas do. */
  readonly arrays: boolean;
  readonly scope: Scope;
  readonly library: Library;
  /** What a reference or an array comes to where one cell is wanted, or an array where arrays are worked with. */
  readonly content: (value: Value | undefined) => Cell | Grid;
  readonly evaluate: (node: FormulaNode | undefined, scope?: Scope) => Value;
  readonly apply: (lambda: Lambda, given: readonly Value[]) => Value;
}

/** A function that decides itself which of its arguments are worked out. */
export type Form = (given: readonly (FormulaNode | undefined)[], calling: Calling) => Value;
/** A function of worked-out arguments; undefined stands for one left out between commas. */
export type WorksheetFunction = (given: readonly (Value | undefined)[], calling: Calling) => Value;

export interface Library {
  readonly form: (name: string) => Form | undefined;
  readonly find: (name: string) => WorksheetFunction | undefined;
}

export interface Surrounding {
  readonly store: CellStore;
  readonly at: Place & { readonly sheet: number };
  readonly arrays: boolean;
  readonly toNumber: ToNumber;
  readonly library: Library;
}

/** Works out a formula. @returns one cell or an array; a reference comes as its cells */
export function evaluateFormula(node: FormulaNode, surrounding: Surrounding): Cell | Grid {
  const calling = callingIn(surrounding, surrounding.arrays, noScope);
  const value = calling.evaluate(node);
  if (isLambda(value)) return errorOf("#CALC!");
  const content = calling.content(value);
  // A formula for one cell shows the first of an array.
  return surrounding.arrays ? content : firstOf(content);
}

const noScope: Scope = new Map();

function callingIn(surrounding: Surrounding, arrays: boolean, scope: Scope): Calling {
  const { store, at, toNumber, library } = surrounding;
  const calling: Calling = {
    store,
    at,
    toNumber,
    arrays,
    scope,
    library,
    content: (value) => contentOf(value, calling),
    evaluate: (node, inner) =>
      inner ? callingIn(surrounding, arrays, inner).evaluate(node) : evaluated(node, calling),
    apply: (lambda, given) => apply(lambda, given, calling),
  };
  return calling;
}

function apply({ parameters, body, scope }: Lambda, given: readonly Value[], calling: Calling): Value {
  if (given.length > parameters.length) return errorOf("#VALUE!");
  const inner = new Map(scope);
  parameters.forEach((name, index) => {
    inner.set(name, given[index] ?? null);
  });
  return calling.evaluate(body, inner);
}

function contentOf(value: Value | undefined, { store, at, arrays }: Calling): Cell | Grid {
  if (value === undefined) return null;
  if (isLambda(value)) return errorOf("#CALC!");
  if (!isReference(value)) return value;
  const [first, ...others] = value.areas;
  if (!first) return errorOf("#NULL!");
  if (others.length > 0) return errorOf("#VALUE!");
  if (arrays) return gridOr(store.arrayCells(first));
  const place = intersect(first.area, at);
  return place ? store.at(first.sheet, place.row, place.column) : errorOf("#VALUE!");
}

/** The one cell of an area that is meant where one is wanted: in the formula's own row of a column, or column of a row. */
function intersect({ top, left, bottom, right }: Area, { row, column }: Place): Place | undefined {
  if (top === bottom && left === right) return { row: top, column: left };
  if (left === right) return row >= top && row <= bottom ? { row, column: left } : undefined;
  if (top === bottom) return column >= left && column <= right ? { row: top, column } : undefined;
  // Of a block, the cell that lies in both.
  return undefined;
}

function evaluated(node: FormulaNode | undefined, calling: Calling): Value {
  if (node === undefined) return null;
  const { content, toNumber, store } = calling;
  switch (node.kind) {
    case "constant":
      return node.value;
    case "array":
      return gridOr(node.rows);
    case "area":
      return { areas: [node] };
    case "name":
      return calling.scope.has(node.name) ? (calling.scope.get(node.name) as Value) : errorOf("#NAME?");
    case "sign": {
      if (node.sign === "@") return single(evaluated(node.of, calling), calling);
      const value = content(evaluated(node.of, calling));
      return node.sign === "+" ? value : lift([value], (cell) => operate("-", 0, cell, toNumber));
    }
    case "percent":
      return lift([content(evaluated(node.of, calling))], (cell) => operate("/", cell, 100, toNumber));
    case "operation": {
      const [left, right] = [content(evaluated(node.left, calling)), content(evaluated(node.right, calling))];
      if (isGrid(left) || isGrid(right)) store.spend(sizeOf(left) + sizeOf(right));
      return lift([left, right], (one, other) => operate(node.operator, one, other, toNumber));
    }
    case "references":
      return joined(node.by, evaluated(node.left, calling), evaluated(node.right, calling));
    case "call":
      return call(node.name, node.given, calling);
    case "invoke": {
      const made = evaluated(node.of, calling);
      if (!isLambda(made)) return isCellError(made as Cell) ? made : errorOf("#VALUE!");
      return calling.apply(
        made,
        node.given.map((one) => evaluated(one, calling)),
      );
    }
  }
}

const sizeOf = (value: Cell | Grid): number => (isGrid(value) ? value.grid.length * (value.grid[0]?.length ?? 0) : 1);

function single(value: Value, calling: Calling): Value {
  const alone = isReference(value) ? contentOf(value, { ...calling, arrays: false }) : value;
  return isGrid(alone) ? (alone.grid[0]?.[0] ?? null) : alone;
}

function joined(by: "range" | "union" | "intersection", left: Value, right: Value): Value {
  if (isCellError(left as Cell)) return left;
  if (isCellError(right as Cell)) return right;
  if (!isReference(left) || !isReference(right)) return errorOf("#VALUE!");
  if (by === "union") return { areas: [...left.areas, ...right.areas] };
  if (by === "intersection") {
    const common = left.areas.flatMap((one) => right.areas.flatMap((other) => commonOf(one, other)));
    return common.length === 0 ? errorOf("#NULL!") : { areas: common };
  }
  const [one, other] = [left.areas[0] as SheetArea, right.areas[0] as SheetArea];
  if (one.sheet !== other.sheet) return errorOf("#VALUE!");
  const area = {
    top: Math.min(one.area.top, other.area.top),
    left: Math.min(one.area.left, other.area.left),
    bottom: Math.max(one.area.bottom, other.area.bottom),
    right: Math.max(one.area.right, other.area.right),
  };
  return { areas: [{ sheet: one.sheet, area }] };
}

function commonOf(one: SheetArea, other: SheetArea): readonly SheetArea[] {
  if (one.sheet !== other.sheet) return [];
  const area = {
    top: Math.max(one.area.top, other.area.top),
    left: Math.max(one.area.left, other.area.left),
    bottom: Math.min(one.area.bottom, other.area.bottom),
    right: Math.min(one.area.right, other.area.right),
  };
  return area.top <= area.bottom && area.left <= area.right ? [{ sheet: one.sheet, area }] : [];
}

function call(name: string, given: readonly (FormulaNode | undefined)[], calling: Calling): Value {
  const form = calling.library.form(name);
  if (form) return form(given, calling);
  const made = calling.scope.get(name);
  if (isLambda(made))
    return calling.apply(
      made,
      given.map((one) => calling.evaluate(one)),
    );
  const found = calling.library.find(name);
  if (!found) throw new NotWorkedOut(`it uses ${name}, which is not worked out here`);
  return found(
    given.map((node, index) => (node === undefined ? undefined : argumentValue(name, index, node, calling))),
    calling,
  );
}

/** An argument, in a formula for one cell by its class. */
function argumentValue(name: string, index: number, node: FormulaNode, calling: Calling): Value {
  if (calling.arrays) return calling.evaluate(node);
  const kind = argumentClass(name, index);
  if (kind === "A") return withArrays(node, calling);
  const value = calling.evaluate(node);
  if (kind === "R") return value;
  if (kind === "V") return isReference(value) ? calling.content(value) : value;
  if (isReference(value) && !isOne(value))
    throw new NotWorkedOut(`what ${name} takes of a range in a formula for one cell is not certain`);
  return value;
}

const isOne = ({ areas }: Reference): boolean =>
  areas.length === 1 && areas.every(({ area }) => area.top === area.bottom && area.left === area.right);

/** The same with whole arrays. */
function withArrays(node: FormulaNode | undefined, calling: Calling): Value {
  return callingIn(calling, true, calling.scope).evaluate(node);
}
