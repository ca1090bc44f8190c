import { describe, expect, it } from "vitest";
import type { Cell } from "../../../src/cells/cell.ts";
import { dayOf } from "../../../src/cells/day.ts";
import { engineInNode } from "../../../src/hosts/headless/engineInNode.ts";
import { openWorkbook } from "../../../src/workbook/openWorkbook.ts";
import { recalculate } from "../../../src/workbook/recalculate.ts";
import { sheetCells } from "../../samples/sheetCells.ts";
import { buildWorkbook, rowsOf } from "../../workbook/buildWorkbook.ts";

const error: Cell = { error: "#VALUE!" };

async function answers(formulas: readonly string[]): Promise<readonly (Cell | undefined)[]> {
  const typed = Object.fromEntries(formulas.map((formula, index) => [`B${index + 1}`, formula]));
  const days = { C1: dayOf("2026-03-01"), C2: dayOf("2026-03-11"), C3: dayOf("2026-03-21") };
  const rows = rowsOf({
    A1: "03/04/2026",
    A2: "2026-03-14",
    A3: "3 Apr",
    A4: "14 Mar 2026",
    A5: "12",
    A6: "2026/03/04",
    ...days,
    ...typed,
  });
  const { bytes, summary } = await recalculate(
    openWorkbook(buildWorkbook({ sheets: [{ name: "One", rows }] })),
    engineInNode(),
  );
  expect(summary.left).toEqual([]);
  const cells = sheetCells(bytes);
  return formulas.map((_, index) => cells.get(`One!B${index + 1}`));
}

// 3 April where the day is written first, 4 March where the month is: a day worked out from it may be a month too early.
describe("a text that is two days", () => {
  it.each([
    "=A1+28",
    "=28+A1",
    "=-A1",
    "=A1-A2",
    "=A3+1",
    '="03/04/2026"+1',
    "=DATEVALUE(A1)",
    '=DATEVALUE("03/04/2026")',
    "=VALUE(A1)",
    '=TEXT(A1,"yyyy-mm-dd")',
    "=DAYS(A1,A2)",
    '=DATEDIF(A1,A2,"d")',
    "=WEEKNUM(A1)",
    "=NETWORKDAYS(A2,A1)",
    "=SUMPRODUCT(A1:A2*1)",
    '=SUM("03/04/2026",1)',
  ])("is no day in %s", async (formula) => {
    expect(await answers([formula])).toEqual([error]);
  });

  it.each([
    '=COUNTIF(C1:C3,">=01/03/2026")',
    '=COUNTIF(C1:C3,">1-Mar-26")',
    '=SUMIFS(C1:C3,C1:C3,"<=3/1/2026")',
    '=MAXIFS(C1:C3,C1:C3,">01/03/2026")',
    '=AVERAGEIF(C1:C3,"<01/03/2026")',
  ])("is no criterion in %s", async (formula) => {
    expect(await answers([formula])).toEqual([error]);
  });

  it("stays the text that it is", async () => {
    const formulas = ['=A1&""', "=LEN(A1)", '=A1="03/04/2026"', '=COUNTIF(A1:A2,"03/04/2026")', "=SUM(A1:A2)"];
    expect(await answers([...formulas, '=VLOOKUP("03/04/2026",A1:A2,1,FALSE)'])).toEqual([
      "03/04/2026",
      10,
      true,
      1,
      0,
      "03/04/2026",
    ]);
  });
});

describe("a text that is one day, or a number", () => {
  it("is reckoned with as before", async () => {
    expect(await answers(["=A6+1", '=COUNTIF(C1:C3,">=2026/03/11")', '=COUNTIF(C1:C3,">"&DATE(2026,3,1))'])).toEqual([
      dayOf("2026-03-05"),
      2,
      2,
    ]);
    expect(await answers(["=A2+28", "=DATEVALUE(A2)", "=A4+1", "=DAYS(A2,A4)", "=A5+1", '="10%"+0'])).toEqual([
      dayOf("2026-04-11"),
      dayOf("2026-03-14"),
      dayOf("2026-03-15"),
      0,
      13,
      0.1,
    ]);
  });
});
