import { writeFileSync } from "node:fs";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { catalogue } from "../../functions/catalogue.ts";
import type { CalcVersion } from "./calcProgram.ts";
import { answerOf, exampleSheet, expectedInCalc } from "./exampleSheet.ts";
import { type Calc, type CalcCell, startCalc } from "./startCalc.ts";
import { excelWorkbook, flatDocument } from "./writeSheets.ts";

const { sheet, placed } = exampleSheet(catalogue);

const files: readonly (readonly [version: CalcVersion, file: string, content: string | Uint8Array])[] = [
  ["7.4", "examples.fods", flatDocument(sheet)],
  ["25.2", "examples.fods", flatDocument(sheet)],
  ["25.2", "examples.xlsx", excelWorkbook(sheet)],
];

describe.each(files)("LibreOffice %s works out %s", (version, file, content) => {
  let calc: Calc;
  let cells: readonly (readonly CalcCell[])[];

  beforeAll(async () => {
    calc = await startCalc(version);
    const path = join(calc.folder, file);
    writeFileSync(path, content);
    cells = (await calc.read(path)).sheets.Calls ?? [];
  });
  afterAll(() => calc.stop());

  it.each(
    placed.map(
      (example, number) => [`${example.definition.name}, ${example.example.shows ?? number}`, example] as const,
    ),
  )("%s", (_, example) => {
    const expected = expectedInCalc(example);
    expect(answerOf(cells, example, expected)).toEqual(expected);
  });
});
