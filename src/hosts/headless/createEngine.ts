import type { ICellData, IWorkbookData, Nullable, ObjectMatrix } from "@univerjs/core";
import type { IAllRuntimeData } from "@univerjs/engine-formula";
import { type Cell, isCellError } from "../../cells/cell.ts";
import type { AnyFunction } from "../../definition/defineFunction.ts";
import { type Area, overlap } from "../../workbook/address.ts";
import {
  type Engine,
  type EngineAnswer,
  type EngineAnswers,
  type EngineSheet,
  type EngineWorkbook,
  placeKey,
} from "../../workbook/engine.ts";
import { lastColumn, lastRow } from "../../workbook/limits.ts";
import type { Format } from "../../writing/format.ts";
import type { Clock } from "../localClock.ts";
import { afterOthers, fitToCells, sortOfACopy, spilledRange } from "./arrayHelpers.ts";
import { bridge, type Listener } from "./bridge.ts";
import { compareEachCell } from "./compareEachCell.ts";
import { keepEmptyTexts, withEmptyText } from "./emptyTexts.ts";
import { partsOfDates } from "./partsOfDates.ts";
import { refuseUnclearDates } from "./refuseUnclearDates.ts";
import { todayAndNow } from "./todayAndNow.ts";
import type { UniverParts } from "./univerParts.ts";
import { cellFromData } from "./valueCells.ts";
import { type Directs, workOutDirectly } from "./workOutDirectly.ts";

const unitId = "workbook";
const sheetId = (place: number): string => `sheet${place}`;

/** Functions the engine handles in its grammar rather than as functions. */
const inGrammar = ["LET", "LAMBDA", "SINGLE", "ANCHORARRAY"];

/**
 * The embedded spreadsheet engine with every worksheet function in it. Each calculation has an engine of its own,
 * which is put away afterwards, so that nothing of one workbook reaches another.
 */
export function createEngine(catalogue: readonly AnyFunction[], parts: UniverParts, clock: Clock): Engine {
  compareEachCell(parts);
  refuseUnclearDates(parts);
  const known = new Set<string>([
    ...(parts.formula.ALL_IMPLEMENTED_FUNCTIONS_SET as ReadonlySet<string>),
    ...inGrammar,
  ]);
  return {
    knows: (name) => known.has(name),
    footNames: catalogue.map(({ name }) => name),
    calculate: (workbook) => calculateWithDirects(workbook, catalogue, parts, clock),
  };
}

/**
 * Formulas that rest on typed records alone are worked out without the engine and handed to it as values. A spill
 * may turn out to reach into what such a formula has read; then that formula goes to the engine after all.
 */
async function calculateWithDirects(
  workbook: EngineWorkbook,
  catalogue: readonly AnyFunction[],
  parts: UniverParts,
  clock: Clock,
): Promise<EngineAnswers> {
  const left = new Set<string>();
  for (;;) {
    const directs = workOutDirectly(workbook, catalogue, (sheet, key) => left.has(`${sheet} ${key}`));
    const answers = await calculate(withValues(workbook, directs), catalogue, parts, clock);
    const reached = reachedBySpills(directs, answers);
    if (reached.length === 0) return withDirects(answers, directs);
    for (const cell of reached) left.add(cell);
  }
}

/**
 * The engine lets go of what its own work throws, so that nobody would ever hear of it. Its step is a private
 * method: to be looked at again when the engine's version changes.
 */
function failWith(service: object, reject: (error: unknown) => void): void {
  const stepping = service as { _executeStep: () => Promise<unknown> };
  const step = stepping._executeStep.bind(service);
  stepping._executeStep = () =>
    step().catch((error: unknown) => {
      reject(error);
      return undefined;
    });
}

const withValues = (workbook: EngineWorkbook, directs: Directs): EngineWorkbook => ({
  ...workbook,
  sheets: workbook.sheets.map(({ name, cells }, place) => ({
    name,
    cells: cells.map((cell) => {
      const direct = directs[place]?.get(placeKey(cell.row, cell.column));
      return direct ? { row: cell.row, column: cell.column, value: direct.answer.value } : cell;
    }),
  })),
});

function reachedBySpills(directs: Directs, { sheets }: EngineAnswers): readonly string[] {
  const spills = sheets.map((answers) => [...answers.values()].flatMap(({ spill }) => (spill ? [spill.area] : [])));
  if (spills.every((areas) => areas.length === 0)) return [];
  return directs.flatMap((list, sheet) =>
    [...list].flatMap(([key, { reads }]) =>
      reads.some(({ sheet: on, area }) => spills[on]?.some((spill) => overlap(spill, area))) ? [`${sheet} ${key}`] : [],
    ),
  );
}

const withDirects = ({ sheets, circular }: EngineAnswers, directs: Directs): EngineAnswers => ({
  circular,
  sheets: sheets.map((answers, place) => {
    const all = new Map(answers);
    for (const [key, { answer }] of directs[place] ?? []) all.set(key, answer);
    return all;
  }),
});

interface Heard {
  readonly message?: string;
  readonly shown?: { readonly formats: readonly Format[]; readonly headings: boolean };
}

async function calculate(
  workbook: EngineWorkbook,
  catalogue: readonly AnyFunction[],
  parts: UniverParts,
  clock: Clock,
): Promise<EngineAnswers> {
  const { core, formula } = parts;
  const heard = new Map<string, Map<number, Heard>>(workbook.sheets.map((_, place) => [sheetId(place), new Map()]));
  const listener: Listener = {
    dateSystem: () => workbook.dateSystem,
    refused: (at, message) => heard.get(at.sheetId)?.set(placeKey(at.row, at.column), { message }),
    answered: (at, { formats, headings }) =>
      heard.get(at.sheetId)?.set(placeKey(at.row, at.column), { shown: { formats, headings } }),
  };
  // Read once, so that all of a workbook is worked out at one moment, even across midnight.
  const now = clock();
  const univer = new core.Univer({ logLevel: core.LogLevel.SILENT });
  try {
    const injector = univer.__getInjector();
    univer.registerPlugin(formula.UniverFormulaEnginePlugin, {
      function: [
        ...catalogue.map((definition) => bridge(definition, parts, listener)),
        fitToCells(parts),
        afterOthers(parts),
        sortOfACopy(parts),
        spilledRange(parts, () => injector.get(formula.IFormulaRuntimeService)),
        ...todayAndNow(parts, () => now),
        ...partsOfDates(parts),
      ] as never,
      // Nobody waits for the main thread here.
      intervalCount: Number.MAX_SAFE_INTEGER,
    });
    univer.createUnit(core.UniverInstanceType.UNIVER_SHEET, snapshot(workbook));
    const names = injector.get(formula.IDefinedNamesService);
    workbook.names.forEach(({ name, formula: text }, place) => {
      names.registerDefinedName(unitId, {
        id: `name${place}`,
        name,
        formulaOrRefString: text,
        localSheetId: "AllDefaultWorkbook",
      });
    });
    const service = injector.get(formula.ICalculateFormulaService);
    const runtime = injector.get(formula.IFormulaRuntimeService);
    keepEmptyTexts(runtime);
    const finished = new Promise<EngineAnswers>((resolve, reject) => {
      failWith(service, reject);
      service.executionCompleteListener$.subscribe((result) => {
        // The engine empties its stores right after this, so the answers are taken now.
        const circular = runtime.isCycleDependency();
        resolve({ sheets: workbook.sheets.map((sheet, place) => answersOf(sheet, place, result, heard)), circular });
      });
    });
    await service.execute({
      formulaData: injector.get(formula.FormulaDataModel).getFormulaData(),
      arrayFormulaCellData: {},
      arrayFormulaRange: {},
      forceCalculate: true,
      dirtyRanges: [],
      dirtyNameMap: {},
      dirtyDefinedNameMap: {},
      dirtyUnitFeatureMap: {},
      dirtyUnitOtherFormulaMap: {},
    });
    return await finished;
  } finally {
    univer.dispose();
  }
}

function snapshot({ sheets }: EngineWorkbook): Partial<IWorkbookData> {
  const entries = sheets.map(({ name, cells }, place) => {
    const cellData: Record<number, Record<number, ICellData>> = {};
    for (const { row, column, value, formula } of cells) {
      cellData[row] ??= {};
      (cellData[row] as Record<number, ICellData>)[column] = formula === undefined ? constant(value) : { f: formula };
    }
    return [
      sheetId(place),
      { id: sheetId(place), name, rowCount: lastRow, columnCount: lastColumn, cellData },
    ] as const;
  });
  return { id: unitId, sheetOrder: entries.map(([id]) => id), sheets: Object.fromEntries(entries) };
}

// CellValueType of the engine: 1 text, 2 number, 3 boolean.
function constant(value: Cell): ICellData {
  if (typeof value === "number") return { v: value, t: 2 };
  if (typeof value === "boolean") return { v: value ? 1 : 0, t: 3 };
  if (isCellError(value)) return { v: value.error, t: 1 };
  return value === null ? {} : withEmptyText({ v: value, t: 1 });
}

function answersOf(
  { cells }: EngineSheet,
  place: number,
  result: IAllRuntimeData,
  heard: ReadonlyMap<string, ReadonlyMap<number, Heard>>,
): ReadonlyMap<number, EngineAnswer> {
  const id = sheetId(place);
  const values = result.unitData[unitId]?.[id];
  const spilled = result.arrayFormulaCellData[unitId]?.[id];
  const areas = result.arrayFormulaRange[unitId]?.[id];
  const answers = new Map<number, EngineAnswer>();
  for (const { row, column, formula } of cells) {
    if (formula === undefined) continue;
    const data = values?.getValue(row, column);
    if (data === undefined || data === null) continue;
    // A formula that gives a blank cell shows 0.
    const value = cellFromData(data) ?? 0;
    const area = areas?.[row]?.[column];
    const blocked = isCellError(value) && value.error === "#SPILL!";
    const isSpill = area !== undefined && !blocked && (area.endRow > row || area.endColumn > column);
    answers.set(placeKey(row, column), {
      value,
      ...heard.get(id)?.get(placeKey(row, column)),
      ...(isSpill && spilled ? { spill: spillOf(area, spilled) } : {}),
    });
  }
  return answers;
}

function spillOf(
  {
    startRow,
    endRow,
    startColumn,
    endColumn,
  }: { startRow: number; endRow: number; startColumn: number; endColumn: number },
  spilled: ObjectMatrix<Nullable<ICellData>>,
): { area: Area; cells: Cell[][] } {
  const cells: Cell[][] = [];
  for (let row = startRow; row <= endRow; row += 1) {
    const line: Cell[] = [];
    for (let column = startColumn; column <= endColumn; column += 1)
      line.push(cellFromData(spilled.getValue(row, column)) ?? 0);
    cells.push(line);
  }
  return { area: { top: startRow, left: startColumn, bottom: endRow, right: endColumn }, cells };
}
