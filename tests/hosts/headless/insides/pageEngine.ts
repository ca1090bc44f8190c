import type { ICellData, Workbook } from "@univerjs/core";
import type { Cell } from "../../../../src/cells/cell.ts";
import type { Registration } from "../../../../src/hosts/headless/bridge.ts";
import { servicesOf } from "../../../../src/hosts/headless/insides/servicesOf.ts";
import { univerInNode } from "../../../../src/hosts/headless/univerInNode.ts";
import { cellFromData } from "../../../../src/hosts/headless/valueCells.ts";
import { readPlace } from "../../../../src/workbook/address.ts";

export const parts = univerInNode();

let count = 0;
const sheet = "sheet0";

type Injector = ReturnType<typeof servicesOf>;

/** What of ours is put into the engine. */
export interface Mends {
  readonly functions?: (services: Injector) => readonly Registration[];
  readonly services?: (services: Injector) => void;
  /** The workbook stays open afterwards, as another one in the page does; what the engine keeps is then kept. */
  readonly stays?: boolean;
}

/**
 * The spreadsheet that is embedded in the page, without the page: as it comes, or mended.
 *
 * @param cells - by address; a text that begins with = is a formula
 * @returns what a cell holds, filled by a formula or its own
 */
export async function workedOut(
  cells: Readonly<Record<string, ICellData | string>>,
  mends: Mends = {},
): Promise<(address: string) => Cell> {
  const { core, formula } = parts;
  count += 1;
  const unit = `workbook${count}`;
  const univer = new core.Univer({ logLevel: core.LogLevel.SILENT });
  try {
    const services = servicesOf(univer);
    univer.registerPlugin(formula.UniverFormulaEnginePlugin, {
      function: (mends.functions?.(services) ?? []) as never,
    });
    const cellData: Record<number, Record<number, ICellData>> = {};
    for (const [address, cell] of Object.entries(cells)) {
      const { row, column } = readPlace(address) ?? { row: 0, column: 0 };
      cellData[row] = { ...cellData[row], [column]: typeof cell === "string" ? { f: cell } : cell };
    }
    univer.createUnit(core.UniverInstanceType.UNIVER_SHEET, {
      id: unit,
      sheetOrder: [sheet],
      sheets: { [sheet]: { id: sheet, name: "Flock", rowCount: 200, columnCount: 20, cellData } },
    });
    mends.services?.(services);
    const calculation = services.get(formula.ICalculateFormulaService);
    const finished = new Promise<(address: string) => Cell>((resolve) => {
      calculation.executionCompleteListener$.subscribe(({ unitData, arrayFormulaCellData }) => {
        const found = new Map<string, Cell>();
        // The engine empties its stores right after this.
        for (const stores of [unitData, arrayFormulaCellData])
          stores[unit]?.[sheet]?.forValue((row, column, data) => {
            found.set(`${row} ${column}`, cellFromData(data));
          });
        resolve((address) => {
          const { row, column } = readPlace(address) ?? { row: 0, column: 0 };
          return found.get(`${row} ${column}`) ?? null;
        });
      });
    });
    await calculation.execute({
      formulaData: services.get(formula.FormulaDataModel).getFormulaData(),
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
    if (!mends.stays) univer.dispose();
  }
}

/** A workbook that stays open, in which cells are typed one after the other. */
export interface OpenedEngine {
  readonly at: (address: string) => Cell;
  /** @returns once all that hangs on it is worked out */
  readonly type: (address: string, cell: ICellData | string) => Promise<void>;
  readonly close: () => void;
}

/** The same spreadsheet with a workbook that has been worked out once and stays open. */
export async function openedEngine(
  cells: Readonly<Record<string, ICellData | string>>,
  mends: Mends = {},
): Promise<OpenedEngine> {
  const { core, formula } = parts;
  count += 1;
  const unit = `workbook${count}`;
  const univer = new core.Univer({ logLevel: core.LogLevel.SILENT });
  const services = servicesOf(univer);
  univer.registerPlugin(formula.UniverFormulaEnginePlugin, { function: (mends.functions?.(services) ?? []) as never });
  univer.createUnit(core.UniverInstanceType.UNIVER_SHEET, {
    id: unit,
    sheetOrder: [sheet],
    sheets: { [sheet]: { id: sheet, name: "Flock", rowCount: 200, columnCount: 20, cellData: {} } },
  });
  mends.services?.(services);
  const calculation = services.get(formula.ICalculateFormulaService);
  const model = services.get(formula.FormulaDataModel);
  const matrix = () =>
    services.get(core.IUniverInstanceService).getUnit<Workbook>(unit)?.getSheetBySheetId(sheet)?.getCellMatrix();
  const put = (address: string, cell: ICellData | string): { row: number; column: number } => {
    const place = readPlace(address) ?? { row: 0, column: 0 };
    matrix()?.setValue(place.row, place.column, typeof cell === "string" ? { f: cell } : cell);
    return place;
  };
  calculation.executionCompleteListener$.subscribe((done) => {
    // As the page does with what came out.
    model.clearPreviousArrayFormulaCellData(done.clearArrayFormulaCellData);
    model.mergeArrayFormulaCellData(done.arrayFormulaCellData);
    model.mergeArrayFormulaRange(done.arrayFormulaRange);
    done.unitData[unit]?.[sheet]?.forValue((row, column, data) => {
      matrix()?.setValue(row, column, { ...matrix()?.getValue(row, column), ...data });
    });
  });
  const workOut = async (changed: readonly { row: number; column: number }[], forceCalculate: boolean) => {
    const finished = new Promise<void>((resolve) => {
      const listening = calculation.executionCompleteListener$.subscribe(() => {
        listening.unsubscribe();
        resolve();
      });
    });
    await calculation.execute({
      formulaData: model.getFormulaData(),
      arrayFormulaCellData: model.getArrayFormulaCellData(),
      arrayFormulaRange: model.getArrayFormulaRange(),
      forceCalculate,
      dirtyRanges: changed.map(({ row, column }) => ({
        unitId: unit,
        sheetId: sheet,
        range: { startRow: row, endRow: row, startColumn: column, endColumn: column },
      })),
      dirtyNameMap: {},
      dirtyDefinedNameMap: {},
      dirtyUnitFeatureMap: {},
      dirtyUnitOtherFormulaMap: {},
    });
    await finished;
  };
  for (const [address, cell] of Object.entries(cells)) put(address, cell);
  await workOut([], true);
  return {
    at(address) {
      const { row, column } = readPlace(address) ?? { row: 0, column: 0 };
      const filled = model.getArrayFormulaCellData()[unit]?.[sheet]?.[row]?.[column];
      return cellFromData(filled ?? matrix()?.getValue(row, column));
    },
    type: (address, cell) => workOut([put(address, cell)], false),
    close: () => univer.dispose(),
  };
}
