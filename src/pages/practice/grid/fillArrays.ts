import { SetArrayFormulaDataMutation } from "@univerjs/engine-formula";
import type { GridBook } from "./gridBook.ts";
import type { ShownWorkbook } from "./shownWorkbook.ts";

/** Puts what the arrays of the open workbook filled when it was saved into their cells. */
export function fillArrays({ commands, formulas, unit }: GridBook, { spills }: ShownWorkbook): void {
  const bySheet = <T>(pick: (spill: ShownWorkbook["spills"][string]) => T): Record<string, T> =>
    Object.fromEntries(Object.entries(spills).map(([id, spill]) => [id, pick(spill)]));
  const areas = () => ({ [unit()]: bySheet((spill) => spill.areas) });
  const cells = () => ({ [unit()]: bySheet((spill) => spill.cells) });
  commands.syncExecuteCommand(
    SetArrayFormulaDataMutation.id,
    { arrayFormulaRange: areas(), arrayFormulaCellData: cells(), arrayFormulaEmbedded: {} },
    { onlyLocal: true },
  );
  formulas.setArrayFormulaRange(areas());
  formulas.setArrayFormulaCellData(cells() as never);
}
