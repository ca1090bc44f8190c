import type { ICellData } from "@univerjs/core";
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
