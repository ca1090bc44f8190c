import { readdirSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { beforeAll, describe, expect, it } from "vitest";
import type { Cell } from "../../src/cells/cell.ts";
import { engineInNode } from "../../src/hosts/headless/engineInNode.ts";
import { placeText } from "../../src/workbook/address.ts";
import { openWorkbook } from "../../src/workbook/openWorkbook.ts";
import { recalculate } from "../../src/workbook/recalculate.ts";
import { sheetCells } from "../samples/sheetCells.ts";
import { differences, identical } from "./differences.ts";
import { type CalcWorkbook, startCalc } from "./startCalc.ts";
import { flatWithoutAnswers, withoutAnswers } from "./withoutAnswers.ts";

// Those that are worked out are the same workbooks as a command leaves them.
const samples = readdirSync("samples").filter((file) => /(?<!-worked-out)\.xlsx$/.test(file));

it("there are workbooks to work out", () => {
  expect(samples).toContain("farm-records.xlsx");
});

describe.each(samples)("samples/%s without its answers", (sample) => {
  let bytes: Uint8Array;
  let expected: ReadonlyMap<string, Cell>;
  let savedAgain: Uint8Array;
  let newer: CalcWorkbook;
  let older: CalcWorkbook;

  beforeAll(async () => {
    bytes = withoutAnswers(readFileSync(`samples/${sample}`));
    const inCalc = async (): Promise<void> => {
      const flat = await inNewer();
      older = await inOlder(flat);
    };
    const inEngine = recalculate(openWorkbook(bytes), engineInNode());
    const [worked] = await Promise.all([inEngine, inCalc()]);
    expected = sheetCells(worked.bytes);
  });

  async function inNewer(): Promise<string> {
    const calc = await startCalc("25.2");
    try {
      const path = join(calc.folder, sample);
      writeFileSync(path, bytes);
      const flat = join(calc.folder, "book.fods");
      const again = join(calc.folder, "again.xlsx");
      newer = await calc.read(
        path,
        { saveAs: flat, filter: "OpenDocument Spreadsheet Flat XML" },
        { saveAs: again, filter: "Calc Office Open XML" },
      );
      savedAgain = readFileSync(again);
      return flatWithoutAnswers(readFileSync(flat, "utf8"));
    } finally {
      await calc.stop();
    }
  }

  async function inOlder(flat: string): Promise<CalcWorkbook> {
    const calc = await startCalc("7.4");
    try {
      const path = join(calc.folder, "book.fods");
      writeFileSync(path, flat);
      return await calc.read(path);
    } finally {
      await calc.stop();
    }
  }

  it("holds no answer before it is worked out", () => {
    const formulas = openWorkbook(bytes).sheets.flatMap(({ rows }) =>
      rows.flatMap(({ cells }) => cells.filter(({ formula }) => formula)),
    );
    expect(formulas.length).toBeGreaterThan(0);
    expect(formulas.filter(({ value }) => value !== null)).toEqual([]);
    expect(sheetCells(bytes).size).toBeLessThan(expected.size);
  });

  it("gives every answer of the embedded engine in LibreOffice 25.2, from the file that Excel opens", () => {
    expect(differences(newer.sheets, expected, identical)).toEqual([]);
  });

  it("gives every answer of the embedded engine in LibreOffice 7.4, from a LibreOffice file", () => {
    expect(differences(older.sheets, expected, holdsLongNumbers(bytes) ? butTheLastDigit : identical)).toEqual([]);
  });

  it("still calls the functions by the names that Excel reads, once LibreOffice 25.2 has saved it", () => {
    expect(callsIn(savedAgain)).toEqual(callsIn(bytes));
  });
});

/** Whether numbers that are no answers have more digits than a LibreOffice file keeps, which are 15. */
const holdsLongNumbers = (workbook: Uint8Array): boolean =>
  openWorkbook(workbook).sheets.some(({ rows }) =>
    rows.some(({ cells }) =>
      cells.some(({ value }) => typeof value === "number" && Number(value.toPrecision(15)) !== value),
    ),
  );

/** Such a number comes back with its 15th digit one up or down, and so does what is worked out of it. */
const butTheLastDigit: typeof identical = (got, wanted) =>
  typeof got === "number" && typeof wanted === "number"
    ? Math.abs(got - wanted) <= 2e-14 * Math.abs(wanted)
    : identical(got, wanted);

/** Where each FOOT function stands, by the name in the file. */
const callsIn = (workbook: Uint8Array): readonly string[] =>
  openWorkbook(workbook).sheets.flatMap(({ name, rows }) =>
    rows.flatMap(({ cells }) =>
      cells.flatMap((cell) =>
        (cell.formula?.text.match(/_xldudf_FOOT_[A-Z0-9]+|FOOT\.[A-Z0-9]+/g) ?? []).map(
          (call) => `${name}!${placeText(cell)}: ${call}`,
        ),
      ),
    ),
  );
