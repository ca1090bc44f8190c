import { ICommandService } from "@univerjs/core";
import { FormulaDataModel } from "@univerjs/engine-formula";
import type { Surroundings } from "../../../workbook/formula/translate.ts";
import type { Workbook } from "../../../workbook/workbook.ts";
import type { Heard } from "./heard.ts";
import { sheetId, sheetPlace } from "./sheetId.ts";
import type { ShownWorkbook } from "./shownWorkbook.ts";
import type { Started } from "./startUniver.ts";

/** A workbook that is shown. */
interface Opened {
  readonly workbook: Workbook;
  readonly around: Surroundings;
  /** As it was laid out when it was opened. */
  readonly shown: ShownWorkbook;
}

/** A cell by the embedded spreadsheet's own name of its sheet. */
export interface CellAt {
  readonly sheet: string;
  readonly row: number;
  readonly column: number;
}

/** The embedded spreadsheet with the workbook it shows, which the parts of the grid share. */
export interface GridBook extends Started {
  readonly commands: ICommandService;
  readonly formulas: FormulaDataModel;
  readonly ears: Heard;
  /** Undefined before the first one. */
  readonly opened: () => Opened | undefined;
  /** Puts another workbook in the place of the one that is open. */
  readonly put: (opened: Opened) => void;
  /** Under which the embedded spreadsheet knows the open workbook. */
  readonly unit: () => string;
  /** Under which it will know the next. */
  readonly nextUnit: () => string;
  /** With its `=`. */
  readonly formulaAt: (cell: CellAt) => string | undefined;
  readonly sheetName: (sheet: string) => string;
  /** Whatever the case of its letters. */
  readonly sheetNamed: (name: string) => string | undefined;
  readonly selected: () => CellAt | undefined;
  readonly selectedSheet: () => string | undefined;
}

export function gridBook(started: Started, ears: Heard): GridBook {
  const { api, injector } = started;
  const formulas = injector.get(FormulaDataModel);
  let opened: Opened | undefined;
  let count = 0;
  const unit = (): string => `workbook${count}`;
  return {
    ...started,
    commands: injector.get(ICommandService),
    formulas,
    ears,
    opened: () => opened,
    put(next) {
      opened = next;
      count += 1;
    },
    unit,
    nextUnit: () => `workbook${count + 1}`,
    formulaAt: ({ sheet, row, column }) => formulas.getFormulaStringByCell(row, column, sheet, unit()) || undefined,
    sheetName: (sheet) => opened?.workbook.sheets[sheetPlace(sheet)]?.name ?? "",
    sheetNamed(name) {
      const wanted = name.toLowerCase();
      const index = opened?.workbook.sheets.findIndex((sheet) => sheet.name.toLowerCase() === wanted) ?? -1;
      return index < 0 ? undefined : sheetId(index);
    },
    selectedSheet: () => api.getActiveWorkbook()?.getActiveSheet()?.getSheetId(),
    selected() {
      const range = api.getActiveWorkbook()?.getActiveSheet()?.getActiveRange();
      return range ? { sheet: range.getSheetId(), row: range.getRow(), column: range.getColumn() } : undefined;
    },
  };
}
