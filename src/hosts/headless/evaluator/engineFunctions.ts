import type { Nullable } from "@univerjs/core";
import type {
  ArrayValueObject,
  BaseValueObject,
  ErrorValueObject,
  FunctionVariantType,
} from "@univerjs/engine-formula";
import { type Cell, isCellError } from "../../../cells/cell.ts";
import { lastColumn, lastRow } from "../../../workbook/limits.ts";
import type { FunctionName, Registration } from "../bridge.ts";
import { engineValues } from "../engineValues.ts";
import type { UniverParts } from "../univerParts.ts";
import { errorCode } from "../valueCells.ts";
import type { Calling, WorksheetFunction } from "./evaluateFormula.ts";
import type { ToNumber } from "./operators.ts";
import { errorOf, gridOr, isGrid, isLambda, isReference, type Value } from "./values.ts";

/** One of the engine's values as a cell. */
function toCell(value: Nullable<BaseValueObject>): Cell {
  if (!value || value.isNull()) return null;
  if (value.isError()) return errorOf(errorCode(String((value as ErrorValueObject).getErrorType())));
  const content = value.getValue();
  return typeof content === "number" && !Number.isFinite(content) ? errorOf("#NUM!") : (content as Cell);
}

// What handing a cell of a range over to the library takes, and sorting it there, in cells of ours; measured.
const perCell = 8;

/** The functions of the library that comes with the embedded spreadsheet, as functions of cells. */
export function engineFunctions(parts: UniverParts, replaced: readonly Registration[]) {
  const { toEngine, toArray } = engineValues(parts);
  const { formula, core } = parts;
  const makers = new Map<string, Registration[0]>();
  for (const list of formula.ALL_IMPLEMENTED_FUNCTIONS as unknown as readonly Registration[])
    makers.set(String(list[1]), list[0]);
  for (const [maker, name] of replaced) makers.set(String(name), maker);
  const made = new Map<string, WorksheetFunction>();

  const make = (name: string, Maker: Registration[0]): WorksheetFunction => {
    const executor = new Maker(name as FunctionName);
    if (executor.needsSheetRowColumnCount) executor.setSheetRowColumnCount(lastRow, lastColumn);
    if (executor.needsLocale) executor.setLocale(core.LocaleType.EN_US);
    const toArgument = (value: Value | undefined, calling: Calling): FunctionVariantType => {
      if (value === undefined) return toEngine(null);
      if (isLambda(value)) return toEngine(errorOf("#VALUE!"));
      if (isReference(value)) {
        const [only] = value.areas;
        if (!only || value.areas.length > 1)
          return toArray(value.areas.flatMap((area) => calling.store.arrayCells(area)));
        return toArray(calling.store.arrayCells(only));
      }
      return isGrid(value) ? toArray(value.grid) : toEngine(value);
    };
    const takes = (argument: FunctionVariantType, calling: Calling): FunctionVariantType => {
      if ("isArray" in argument && argument.isArray()) {
        const array = argument as ArrayValueObject;
        calling.store.spend(perCell * array.getRowCount() * array.getColumnCount());
      }
      return argument;
    };
    return (given, calling) => {
      const { minParams, maxParams } = executor;
      if (minParams !== -1 && maxParams !== -1 && (given.length < minParams || given.length > maxParams))
        return errorOf("#N/A");
      executor.setRefInfo("workbook", `sheet${calling.at.sheet}`, calling.at.row, calling.at.column);
      const answer = executor.calculate(
        ...(given.map((value) => takes(toArgument(value, calling), calling)) as never[]),
      );
      if (!answer || !("isArray" in answer)) return errorOf("#VALUE!");
      const value = answer as BaseValueObject;
      if (value.isArray()) return gridOr((value as ArrayValueObject).getArrayValue().map((line) => line.map(toCell)));
      return toCell(value);
    };
  };

  return {
    names: [...makers.keys()],
    find(name: string): WorksheetFunction | undefined {
      const ready = made.get(name);
      if (ready) return ready;
      const maker = makers.get(name);
      if (!maker) return undefined;
      const built = make(name, maker);
      made.set(name, built);
      return built;
    },
  };
}

const plain = /^[+-]?(?:\d{1,309}(?:\.\d{0,309})?|\.\d{1,309})(?:[eE][+-]?\d{1,3})?$/;
const withThousands = /^[+-]?\d{1,3}(?:,\d{3}){1,5}(?:\.\d{0,15})?$/;
// A date or an amount is no longer than this; what is longer is no number.
const longest = 60;

/** The number that a text stands for in a formula: plain, with a percent sign, or a clear date. */
export function textToNumber({ core, formula }: UniverParts, dayOffset: number): ToNumber {
  const { StringValueObject } = formula;
  // The engine counts the days of a text from 1900 whatever the workbook does; a time of day is below 1.
  const isDay = (text: string, value: number): boolean =>
    value >= 1 && /[dmy]/.test(core.numfmt.parseDate(text)?.z?.toString() ?? "");
  const known = new Map<string, number | undefined>();
  return (written) => {
    if (written.length > 330) return undefined;
    const text = written.trim();
    if (plain.test(text)) {
      const value = Number(text);
      return Number.isFinite(value) ? value : undefined;
    }
    if (text === "" || text.length > longest || !/\d/.test(text)) return undefined;
    if (known.has(text)) return known.get(text);
    if (known.size > 10_000) known.clear();
    const found = readNumber(text, StringValueObject);
    const value = dayOffset > 0 && found !== undefined && isDay(text, found) ? found - dayOffset : found;
    known.set(text, value);
    return value;
  };
}

function readNumber(text: string, Text: UniverParts["formula"]["StringValueObject"]): number | undefined {
  if (withThousands.test(text)) return Number(text.replaceAll(",", ""));
  // An amount in brackets is below 0, as in books of account.
  const inBrackets = /^\(([\d.,]+)\)$/.exec(text)?.[1];
  if (inBrackets !== undefined && (plain.test(inBrackets) || withThousands.test(inBrackets)))
    return -Number(inBrackets.replaceAll(",", ""));
  const percent = /^(.*\d)\s*%$/.exec(text)?.[1];
  if (percent !== undefined && plain.test(percent)) return Number(percent) / 100;
  const value = Text.create(text).convertToNumberObjectValue();
  return value.isNumber() && !isCellError(value.getValue() as Cell) ? Number(value.getValue()) : undefined;
}
