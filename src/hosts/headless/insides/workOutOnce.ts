import type { ICellData, Injector, IRange, IUnitRange, Nullable, ObjectMatrix } from "@univerjs/core";
import type {
  CalculateFormulaService,
  FormulaDependencyTree,
  FunctionVariantType,
  IAllRuntimeData,
  IFormulaCurrentConfigService,
  IFormulaDatasetConfig,
  IFormulaRuntimeService,
  Interpreter,
} from "@univerjs/engine-formula";
import { type FilledAreas, isInArea } from "../filledAreas.ts";
import { sameContent } from "../sameContent.ts";
import type { UniverParts } from "../univerParts.ts";

/** What the engine's service for a whole run keeps to itself. */
interface Service {
  execute: CalculateFormulaService["execute"];
  readonly _runtimeService: IFormulaRuntimeService;
  readonly _currentConfigService: IFormulaCurrentConfigService;
  readonly _interpreter: Interpreter;
  readonly _lexer: Parameters<typeof import("@univerjs/engine-formula").generateAstNode>[2];
  readonly _astTreeBuilder: Parameters<typeof import("@univerjs/engine-formula").generateAstNode>[3];
  readonly _formulaDependencyGenerator: {
    generate: () => Promise<FormulaDependencyTree[]>;
    _createFDtree: (...given: unknown[]) => FormulaDependencyTree;
    _createVirtualFDtree: (...given: unknown[]) => FormulaDependencyTree;
  };
  readonly _executionInProgressListener$: { next: (state: unknown) => void };
  readonly _executionCompleteListener$: { next: (data: unknown) => void };
}

type Matrix<T> = { getValue: (row: number, column: number) => Nullable<T> };
type BySheet<T> = Readonly<Record<string, Nullable<Readonly<Record<string, Nullable<T>>>>>>;

// As long as nobody notices that the page stands still.
const slice = 40;
// Each round works out what read cells before another formula filled them; more rounds no sheet needs.
const mostRounds = 12;
const blank: ICellData = {};
// Which cells these read shows only when they are worked out.
const readsAnywhere = /\b(?:OFFSET|INDIRECT|ANCHORARRAY)\(/i;

/**
 * Has the engine work a formula out once, after those whose cells it reads, and only where something that it reads is
 * another than before; in between the page is let go on. As it comes the engine works out all that rests on a changed cell
 * through however many formulas, and a second time all that rests on a formula that fills several cells, whether those
 * came out the same or not.
 */
export function workOutOnce({ core, formula }: UniverParts, services: Injector): void {
  const { ICalculateFormulaService, IDependencyManagerService, FormulaDataModel, FormulaExecuteStageType } = formula;
  const service = services.get(ICalculateFormulaService) as unknown as Service;
  const dependencies = services.get(IDependencyManagerService);
  const model = services.get(FormulaDataModel);
  const instances = services.get(core.IUniverInstanceService);
  const { _runtimeService: runtime, _currentConfigService: config, _formulaDependencyGenerator: generator } = service;

  const stage = (now: number): void => {
    runtime.setFormulaExecuteStage(now);
    service._executionInProgressListener$.next(runtime.getRuntimeState());
  };
  const storedArea = (tree: FormulaDependencyTree): IRange | undefined =>
    areaAt(config.getArrayFormulaRange() as BySheet<FilledAreas>, tree);
  /** So that what reads any of the cells that a formula fills comes after it. */
  const withAllItsCells = (make: "_createFDtree" | "_createVirtualFDtree"): void => {
    const made = generator[make].bind(generator);
    generator[make] = (...given) => {
      const tree = made(...given);
      tree.toRTreeItem = () => [
        { unitId: tree.unitId, sheetId: tree.subUnitId, range: storedArea(tree) ?? cellRange(tree.row, tree.column) },
      ];
      return tree;
    };
  };
  withAllItsCells("_createFDtree");
  withAllItsCells("_createVirtualFDtree");

  const answerOf = async (tree: FormulaDependencyTree): Promise<FunctionVariantType> => {
    const node = formula.generateAstNode(tree.unitId, tree.formula, service._lexer, service._astTreeBuilder, config);
    const { refOffsetX, refOffsetY } = tree;
    const work = { node, refOffsetX, refOffsetY };
    try {
      return service._interpreter.checkAsyncNode(node)
        ? await service._interpreter.executeAsync(work)
        : service._interpreter.execute(work);
    } finally {
      node.resetCalculationState();
    }
  };

  const blanked: (() => void)[] = [];
  /**
   * Has what a formula filled earlier and fills no more read as blank for the rest of the run. Of ranges the engine reads
   * on what was there.
   */
  const blankOut = (before: IRange, now: IRange | undefined, filled: ObjectMatrix<Nullable<ICellData>>): void => {
    for (let row = before.startRow; row <= before.endRow; row += 1)
      for (let column = before.startColumn; column <= before.endColumn; column += 1) {
        if ((now && isInArea(now, row, column)) || filled.getValue(row, column)) continue;
        filled.setValue(row, column, blank);
        blanked.push(() => {
          if (filled.getValue(row, column) === blank) filled.realDeleteValue(row, column);
        });
      }
  };

  /** Works a formula out, and tells which cells are others than before. */
  const workOut = async (tree: FormulaDependencyTree, isAgain: boolean): Promise<readonly IUnitRange[]> => {
    const { unitId, subUnitId, row, column } = tree;
    const before = storedArea(tree);
    const lastTime = isAgain ? forget(runtime, tree) : undefined;
    runtime.setCurrent(row, column, tree.rowCount, tree.columnCount, subUnitId, unitId);
    if (tree.getDirtyData && tree.featureId !== undefined && tree.featureId !== null) {
      const found = tree.getDirtyData(config.getDirtyData(), runtime.getAllRuntimeData());
      runtime.setRuntimeFeatureCellData(tree.featureId, found.runtimeCellData);
      runtime.setRuntimeFeatureRange(tree.featureId, found.dirtyRanges);
      return rangesOf(found.dirtyRanges);
    }
    const value = await answerOf(tree);
    if (tree.formulaId !== undefined && tree.formulaId !== null) {
      runtime.setRuntimeOtherData(tree.formulaId, tree.refOffsetX, tree.refOffsetY, value);
      return [];
    }
    runtime.setRuntimeData(value);
    const now = areaAt(runtime.getUnitArrayFormula() as BySheet<FilledAreas>, tree);
    const area = around([before, now, lastTime, cellRange(row, column)]);
    const unitRange = (range: IRange): IUnitRange => ({ unitId, sheetId: subUnitId, range });
    // What it came to the first time is written over.
    if (isAgain) return [unitRange(area)];
    const stored = config.getArrayFormulaCellData() as BySheet<Matrix<ICellData>>;
    const inArrays = stored[unitId]?.[subUnitId];
    const inSheet = config.getUnitData()[unitId]?.[subUnitId]?.cellData;
    const filled = runtime.getRuntimeArrayFormulaCellData()[unitId]?.[subUnitId];
    const own = runtime.getUnitData()[unitId]?.[subUnitId]?.getValue(row, column);
    const isBlocked = own?.v === "#SPILL!";
    if (before && filled) blankOut(before, isBlocked ? undefined : now, filled);
    return changedIn(area, (at, across) => {
      const isOwn = at === row && across === column;
      const old = inArrays?.getValue(at, across) ?? inSheet?.getValue(at, across);
      const isFilled = now !== undefined && !isBlocked && isInArea(now, at, across);
      const fresh = isOwn ? own : isFilled ? filled?.getValue(at, across) : undefined;
      // Of a cell that it does not fill what it held is no concern, unless it was this formula that filled it.
      if (!isOwn && !isFilled && !(before && isInArea(before, at, across))) return false;
      return !sameContent(old, fresh);
    }).map(unitRange);
  };

  const workOutAll = async (): Promise<"worked out" | "nothing to do" | "stopped"> => {
    const isForced = config.isForceCalculate();
    const done = new Set<number>();
    let must: ReadonlySet<number> | undefined;
    let breathed = performance.now();
    for (let round = 0; round < mostRounds; round += 1) {
      formula.FORMULA_REF_TO_ARRAY_CACHE.clear();
      const trees = (await generator.generate()).reverse();
      dependencies.openKdTree();
      try {
        const wanted = new Set(must ?? dependencies.searchDependency(config.getDirtyRanges()));
        const places = new Map(trees.map(({ treeId }, place) => [treeId, place]));
        const late = new Map<number, readonly IUnitRange[]>();
        runtime.setTotalFormulasToCalculate(trees.length);
        if (round === 0) stage(FormulaExecuteStageType.CURRENTLY_CALCULATING);
        for (const [place, tree] of trees.entries()) {
          const isNeeded =
            wanted.has(tree.treeId) ||
            readsAnywhere.test(tree.formula) ||
            (round === 0 && (isForced || isAlwaysNeeded(tree)));
          if (!isNeeded) continue;
          if (performance.now() - breathed > slice) {
            runtime.setCompletedFormulasCount(place);
            await pause();
            breathed = performance.now();
            // Another workbook may have been opened meanwhile.
            if (!instances.getUnit(tree.unitId)) return "stopped";
          }
          if (runtime.isStopExecution()) return "stopped";
          const changed = await workOut(tree, done.has(tree.treeId));
          done.add(tree.treeId);
          for (const reader of changed.length === 0 ? [] : dependencies.searchDependency([...changed])) {
            if (reader === tree.treeId) continue;
            const at = places.get(reader);
            if (at !== undefined && at > place) wanted.add(reader);
            else late.set(reader, [...(late.get(reader) ?? []), ...changed]);
          }
        }
        if (late.size === 0 || (runtime.isCycleDependency() && round > 0)) break;
        must = new Set(late.keys());
        config.loadDirtyRangesAndExcludedCell([...new Set([...late.values()].flat())], {});
      } finally {
        dependencies.closeKdTree();
      }
    }
    return done.size > 0 ? "worked out" : "nothing to do";
  };

  const run = async (given: IFormulaDatasetConfig, isLate: boolean): Promise<void> => {
    // What came of the run before may have changed them.
    const fresh = {
      formulaData: model.getFormulaData(),
      arrayFormulaCellData: model.getArrayFormulaCellData(),
      arrayFormulaRange: model.getArrayFormulaRange(),
    };
    runtime.reset();
    stage(FormulaExecuteStageType.START);
    config.load(isLate ? { ...given, ...fresh } : given);
    const end = await workOutAll();
    if (end === "worked out") runtime.markedAsSuccessfullyExecuted();
    else if (end === "nothing to do") runtime.markedAsNoFunctionsExecuted();
    // The person has typed something else meanwhile, and both are worked out next.
    else runtime.markedAsStopFunctionsExecuted();
    stage(end === "stopped" ? FormulaExecuteStageType.IDLE : FormulaExecuteStageType.CALCULATION_COMPLETED);
    for (const takeBack of blanked.splice(0)) takeBack();
    formula.FORMULA_REF_TO_ARRAY_CACHE.clear();
    const came = runtime.getAllRuntimeData();
    leaveOutNothings(came, model.getArrayFormulaRange() as BySheet<FilledAreas>);
    service._executionCompleteListener$.next(came);
    formula.CELL_INVERTED_INDEX_CACHE.clear();
    runtime.reset();
  };

  let waiting = 0;
  let last: Promise<void> = Promise.resolve();
  service.execute = (given) => {
    const isLate = waiting > 0;
    waiting += 1;
    last = last
      .catch(() => undefined)
      .then(() => run(given, isLate))
      .finally(() => {
        waiting -= 1;
      });
    return last;
  };
}

/** Takes out sheets in which nothing is filled any more or anew: the engine copies all the cells of each that is named. */
function leaveOutNothings(came: IAllRuntimeData, filled: BySheet<FilledAreas>): void {
  for (const [unit, sheets] of Object.entries(came.clearArrayFormulaCellData))
    for (const [sheet, cells] of Object.entries(sheets ?? {})) {
      let isFilled = false;
      cells?.forValue((row, column) => {
        isFilled ||= Boolean(filled[unit]?.[sheet]?.[row]?.[column]);
      });
      if (!isFilled) delete sheets?.[sheet];
    }
  for (const sheets of Object.values(came.arrayFormulaCellData))
    for (const [sheet, cells] of Object.entries(sheets ?? {})) if (cells?.hasValue() !== true) delete sheets?.[sheet];
}

/** What the person does comes first. */
const pause = (): Promise<unknown> => new Promise((resolve) => setTimeout(resolve));

const areaAt = (
  areas: BySheet<FilledAreas>,
  { unitId, subUnitId, row, column }: FormulaDependencyTree,
): IRange | undefined => areas[unitId]?.[subUnitId]?.[row]?.[column] ?? undefined;

const isAlwaysNeeded = (tree: FormulaDependencyTree): boolean =>
  tree.isDirty ||
  (tree.featureId !== undefined && tree.featureId !== null) ||
  (tree.formulaId !== undefined && tree.formulaId !== null && tree.formulaId !== "");

const cellRange = (row: number, column: number): IRange => ({
  startRow: row,
  endRow: row,
  startColumn: column,
  endColumn: column,
});

function around(ranges: readonly (IRange | undefined)[]): IRange {
  const known = ranges.filter((range) => range !== undefined);
  return {
    startRow: Math.min(...known.map(({ startRow }) => startRow)),
    endRow: Math.max(...known.map(({ endRow }) => endRow)),
    startColumn: Math.min(...known.map(({ startColumn }) => startColumn)),
    endColumn: Math.max(...known.map(({ endColumn }) => endColumn)),
  };
}

/** For each column the stretch of rows from the first changed cell to the last. */
function changedIn(area: IRange, isChanged: (row: number, column: number) => boolean): readonly IRange[] {
  const changed: IRange[] = [];
  for (let column = area.startColumn; column <= area.endColumn; column += 1) {
    let [first, last] = [-1, -1];
    for (let row = area.startRow; row <= area.endRow; row += 1) {
      if (!isChanged(row, column)) continue;
      if (first < 0) first = row;
      last = row;
    }
    if (first >= 0) changed.push({ startRow: first, endRow: last, startColumn: column, endColumn: column });
  }
  return changed;
}

/** Takes back what a formula came to earlier in this run, and tells which cells those were. */
function forget(runtime: IFormulaRuntimeService, tree: FormulaDependencyTree): IRange | undefined {
  const { unitId, subUnitId, row, column } = tree;
  const areas = runtime.getUnitArrayFormula()[unitId]?.[subUnitId]?.[row];
  const area = areas?.[column];
  if (!areas || !area) return undefined;
  delete areas[column];
  const filled = runtime.getRuntimeArrayFormulaCellData()[unitId]?.[subUnitId];
  for (let at = area.startRow; at <= area.endRow; at += 1)
    for (let across = area.startColumn; across <= area.endColumn; across += 1) filled?.realDeleteValue(at, across);
  return area;
}

const rangesOf = (bySheet: BySheet<readonly IRange[]>): IUnitRange[] =>
  Object.entries(bySheet).flatMap(([unitId, sheets]) =>
    Object.entries(sheets ?? {}).flatMap(([sheetId, ranges]) =>
      (ranges ?? []).map((range) => ({ unitId, sheetId, range })),
    ),
  );
