import type { Engine } from "../engine.ts";
import type { DefinedName } from "../model.ts";
import type { Workbook } from "../workbook.ts";
import type { TableOnSheet } from "./structured.ts";
import type { Surroundings } from "./translate.ts";

/** What the formulas of a workbook may refer to, by name in small letters. */
export function surroundingsOf(
  workbook: Workbook,
  { knows, footNames }: Pick<Engine, "knows" | "footNames">,
): Surroundings {
  const names = new Map<string, DefinedName[]>();
  for (const name of workbook.names) {
    const key = name.name.toLowerCase();
    const alike = names.get(key);
    if (alike) alike.push(name);
    else names.set(key, [name]);
  }
  const tables = new Map<string, TableOnSheet>();
  workbook.sheets.forEach((sheet, index) => {
    for (const table of sheet.tables) tables.set(table.name.toLowerCase(), { table, sheet: index });
  });
  return {
    sheets: workbook.sheets,
    sheetByName: new Map(workbook.sheets.map(({ name }, index) => [name.toLowerCase(), index])),
    names,
    tables,
    date1904: workbook.dateSystem === 1904,
    knows,
    footNames: new Set(footNames),
  };
}
